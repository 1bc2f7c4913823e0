import { afterEach, describe, expect, it } from 'vitest';
import { leave, linkOf, pairingIn, sentence, useBrowser, visit } from './support.ts';

/**
 * The sentence against plain arithmetic: the link's JSON is read here, and magnification, crop, margin
 * and remedy are worked out from it without a line of core.
 */
useBrowser();
afterEach(leave);

interface Told {
  objective: { magnification: number; na: number; referenceFocalLengthMm: number; fieldNumberMm: number; exitPupilFromShoulderMm?: number };
  relay: { focalLengthMm: number; clearApertureMm: number };
  sensor: { widthMm: number; heightMm: number };
  infinitySpaceMm: number;
}

/** Three significant digits, no idle zeros. */
const three = (x: number): string => String(Number(x.toPrecision(3)));

/** Area that two circles share, radii R and r, centres d apart (any geometry text). */
function lens(R: number, r: number, d: number): number {
  if (d >= R + r) return 0;
  if (d <= Math.abs(R - r)) return Math.PI * Math.min(R, r) ** 2;
  const a = r * r * Math.acos((d * d + r * r - R * R) / (2 * d * r));
  const b = R * R * Math.acos((d * d + R * R - r * r) / (2 * d * R));
  return a + b - Math.sqrt((-d + r + R) * (d + r - R) * (d - r + R) * (d + r + R)) / 2;
}

function derived({ objective, relay, sensor, infinitySpaceMm }: Told) {
  const fo = objective.referenceFocalLengthMm / objective.magnification;
  const f = relay.focalLengthMm;
  const diagonal = Math.hypot(sensor.widthMm, sensor.heightMm);
  const corrected = (objective.fieldNumberMm * f) / objective.referenceFocalLengthMm;
  const pupil = objective.na * fo;
  const walk = ((infinitySpaceMm - (objective.exitPupilFromShoulderMm ?? 0)) * diagonal) / 2 / f;
  return {
    magnification: three(f / fo),
    crop: [sensor.widthMm, sensor.heightMm].map((side) => three((side * Math.min(1, corrected / diagonal)) as number)),
    margin: three(Math.abs(diagonal - corrected) / 2),
    covering: (diagonal * objective.referenceFocalLengthMm) / objective.fieldNumberMm,
    field: [sensor.widthMm, sensor.heightMm].map((side) => three(side / (f / fo))),
    light: lens(relay.clearApertureMm / 2, pupil, walk) / (Math.PI * Math.min(pupil, relay.clearApertureMm / 2) ** 2),
  };
}

const known = (x: number) => ({ value: x, plusMinus: 0, origin: 'measured' });
const bare = {
  objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, fieldNumberMm: 22, exitPupilFromShoulderMm: 0 },
  relay: { kind: 'supplementary', focalLengthMm: 200, clearApertureMm: 54, frontPrincipalPlaneFromRimMm: 0 },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 },
  infinitySpaceMm: 60,
};

describe('the sentence, derived anew from the link', () => {
  it('crops where the field ends short of the corners, and names the relay that would cover', async () => {
    const page = await visit(linkOf(bare));
    const said = await sentence(page);
    const is = derived((await pairingIn(page)) as unknown as Told);
    expect(is.magnification).toBe('10');
    expect(said).toContain(`At ${is.magnification}×, keep the middle ${is.crop[0]} × ${is.crop[1]} mm`);
    expect(said).toContain(`ends ${is.margin} mm short of the corners`);
    expect(is.light).toBe(1);
    expect(said).toContain('Light reaches the corners fully.');
    const relay = Number(said.match(/A (\d+(?:\.\d+)?) mm relay would cover/)?.[1]);
    // Three digits: half a unit of the last one at most, or one where it is rounded up.
    expect(Math.abs(relay - is.covering)).toBeLessThan(1);
  });

  it('covers where the field goes past the corners', async () => {
    const page = await visit(linkOf({ ...bare, sensor: { widthMm: 13.2, heightMm: 8.8, pixelPitchUm: 2.4 }, infinitySpaceMm: 80 }));
    const said = await sentence(page);
    const is = derived((await pairingIn(page)) as unknown as Told);
    expect(said).toContain(`At ${is.magnification}× the picture is covered to the corners, ${is.field[0]} × ${is.field[1]} mm of subject`);
    expect(said).toContain(`reaches ${is.margin} mm past them`);
    expect(said).not.toContain('would cover');
  });

  it('misses where a narrow rim takes the corners, with their share of the light', async () => {
    const page = await visit(
      linkOf({
        ...bare,
        objective: { ...bare.objective, na: 0.28, fieldNumberMm: 24, exitPupilFromShoulderMm: known(0) },
        relay: { ...bare.relay, focalLengthMm: 100, clearApertureMm: 23 },
        sensor: { widthMm: 23.5, heightMm: 15.6, pixelPitchUm: 3.9 },
        infinitySpaceMm: 90,
      }),
    );
    const said = await sentence(page);
    const link = (await pairingIn(page)) as unknown as Told;
    const is = derived({ ...link, objective: { ...link.objective, exitPupilFromShoulderMm: 0 } });
    expect(is.crop[0]).toBe('10');
    expect(said).toContain(`At ${is.magnification}× this pairing misses the sensor, only the middle ${is.crop[0]} × ${is.crop[1]} mm`);
    expect(said).toContain(`ends ${is.margin} mm short of the corners`);
    expect(Math.round(100 * is.light)).toBe(32);
    expect(said).toContain(`${Math.round(100 * is.light)} % of the light`);
  });
});
