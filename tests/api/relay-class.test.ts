import { describe, expect, test } from 'vitest';
import { buildApp } from '../../api/app.ts';
import { familySchema } from '../../api/schemas/relay-class.ts';

const app = buildApp();
const post = async (path: string, body: unknown): Promise<{ status: number; json: never }> => {
  const answer = await app.request(`http://127.0.0.1${path}`, {
    method: 'POST',
    body: JSON.stringify(body),
    headers: { 'content-type': 'application/json', host: '127.0.0.1' },
  });
  return { status: answer.status, json: (await answer.json()) as never };
};

describe('POST /api/relays/class', () => {
  test('gives the lenses of a class, each of the focal length asked for when it is sent back as glass', async () => {
    const { status, json } = await post('/api/relays/class', { class: 'cemented-achromat', focalLengthMm: 200, clearApertureMm: 54 });
    expect(status).toBe(200);
    const { lenses, unmade } = familySchema.parse(json);
    expect(lenses.length + unmade.length).toBe(16);
    expect(lenses.length).toBeGreaterThan(10);
    for (const { glass, residuals } of [lenses[0], lenses.at(-1)].flatMap((l) => l ?? [])) {
      const traced = await post('/api/relays/trace', {
        relay: { kind: 'supplementary', glass },
        pupilDiameterMm: 11.2,
        pupilDistanceMm: 50,
        slopes: [0],
        wavelengthsNm: [587.5618, 486.1327, 656.2725],
        focus: 'paraxial',
      });
      const told = traced.json as { effectiveFocalLengthMm: number; chromaticBackFocusShiftMm: [number, number, number] };
      expect(told.effectiveFocalLengthMm).toBeCloseTo(200, 6);
      const [, F, C] = told.chromaticBackFocusShiftMm;
      expect(F - C).toBeCloseTo(residuals.axialColourMm, 4);
      expect(-(F + C) / 2).toBeCloseTo(residuals.secondaryColourMm, 4);
    }
  });

  test('says of those that cannot be made why not', async () => {
    const { json } = await post('/api/relays/class', { class: 'cemented-achromat', focalLengthMm: 60, clearApertureMm: 58 });
    const { lenses, unmade } = familySchema.parse(json);
    expect(lenses).toEqual([]);
    expect(unmade[0]?.why).toContain('too steep');
  });

  test.each([
    [{ class: 'triplet', focalLengthMm: 200, clearApertureMm: 54 }, '/class', 'notOneOf'],
    [{ class: 'singlet', clearApertureMm: 54 }, '/focalLengthMm', 'missing'],
    [{ class: 'singlet', focalLengthMm: 200, clearApertureMm: -1 }, '/clearApertureMm', 'tooSmall'],
    [{ class: 'singlet', focalLengthMm: 1e9, clearApertureMm: 54 }, '/focalLengthMm', 'tooBig'],
    [{ class: 'singlet', focalLengthMm: 200, clearApertureMm: 54, more: 1 }, '', 'unknownName'],
  ])('refuses %o at its field', async (body, path, code) => {
    const { status, json } = await post('/api/relays/class', body);
    expect(status).toBe(422);
    expect((json as { errors: object[] }).errors[0]).toMatchObject({ path, code });
  });

  test('holds at the ends of what may be asked', async () => {
    for (const [focalLengthMm, clearApertureMm] of [
      [5, 0.1],
      [5, 500],
      [5000, 0.1],
      [5000, 500],
    ])
      for (const kind of ['singlet', 'cemented-achromat', 'air-spaced-achromat']) {
        const { status, json } = await post('/api/relays/class', { class: kind, focalLengthMm, clearApertureMm });
        expect(status, `${kind} ${focalLengthMm} ${clearApertureMm}`).toBe(200);
        familySchema.parse(json);
        expect(JSON.stringify(json)).not.toContain('null');
      }
  });
});
