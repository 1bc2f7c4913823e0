import { describe, expect, it } from 'vitest';
import { type Pairing, pairingSchema } from '../../../../core/index.ts';
import { evaluateTable, lightSentence, planOf, type Settings, sideViewOf } from '../../../../core/table.ts';

const PLAN = planOf('light');

/** Its nose is 10 mm over the subject, and nobody has measured it. */
const PAIRING: Pairing = pairingSchema.parse({
  objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, workingDistanceMm: 10 },
  relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 54 },
  sensor: { widthMm: 23.5, heightMm: 15.6, pixelPitchUm: 4 },
  infinitySpaceMm: 60,
  subject: { depthMm: 0.4 },
});

const on = (settings: Settings) => evaluateTable(PAIRING, settings, undefined, PLAN);
const said = (settings: Settings): string => lightSentence(on(settings));

describe('room for light in words', () => {
  it('waits for the nose to be measured until its end is told, and then takes that as its width', () => {
    expect(said({})).toContain('until you measure the nose');
    const words = said({ noseFrontDiameterMm: 18 });
    expect(words).not.toContain('measure the nose');
    expect(words).toContain('up to 48° above the stage');
    expect(sideViewOf(on({ noseFrontDiameterMm: 18 }))).toMatchObject({ noseMm: 18, noseEndMm: 18 });
    expect(sideViewOf(on({ noseFrontDiameterMm: 18, noseTaperLengthMm: 5 }))).toMatchObject({
      noseEndMm: 18,
      taperMm: 5,
      noseMm: sideViewOf(on({}))?.noseMm,
    });
  });

  it('says by how much a diffuser is too narrow, likely or surely', () => {
    const wall = { diffuserHeightMm: 20, noseFrontDiameterMm: { value: 18, plusMinus: 6 } };
    expect(said({ ...wall, diffuserDiameterMm: 16 })).toContain('a diffuser of 16 mm is likely 1 mm too narrow (−4 to +2 mm to spare)');
    expect(said({ ...wall, diffuserDiameterMm: 8 })).toContain('a diffuser of 8 mm does not fit: it is 5 mm too narrow');
    expect(said({ ...wall, diffuserDiameterMm: 30 })).toMatch(/fits with 6 mm to spare, and fills \d+ % of that half-space/);
  });
});
