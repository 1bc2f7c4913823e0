import { describe, expect, it } from 'vitest';
import { Gap, type Step } from '../../../core/figure.ts';
import { FIGURES } from '../../../core/index.ts';
import { GRAPH } from '../../../core/pairing/registry.ts';

/** What single steps make of their needs, known or not, each worked out by hand. */

const of = (id: string, ...needs: unknown[]): unknown => {
  const node = GRAPH.order.find((n) => n.id === id) as Step<unknown>;
  return (node.of as (...values: unknown[]) => unknown)(...needs);
};
const un = (...paths: string[]): Gap => Gap.unknown(...paths);

/** The step's answer with each of its needs in turn unknown. */
const withEachGone = (id: string, needs: readonly unknown[], which = needs.map((_, i) => i)): unknown[] =>
  which.map((i) => of(id, ...needs.map((need, j) => (i === j ? un(`/${i}`) : need))));
const gaps = (which: readonly number[]): Gap[] => which.map((i) => un(`/${i}`));

describe('room at the subject', () => {
  it('beside the relay is a right angle unless all of it is known', () => {
    // 65 - 5 + 60 up, half of 200 + 40 to the side.
    const known = [65, 5, 60, 200, 40];
    expect(of('besideRelay', ...known)).toBeCloseTo(45, 12);
    expect(of('besideRelay', 5, 100, 60, 200, 40)).toBe(0);
    expect(withEachGone('besideRelay', known)).toEqual([90, 90, 90, 90, 90]);
  });
  it('is the least of both, and not known without the nose, the distance or the field', () => {
    const known = [10, 16, 4, 60];
    expect(of('lightConeDeg', ...known)).toBeCloseTo(45, 12);
    expect(of('lightConeDeg', 10, 16, 4, 30)).toBe(30);
    expect(withEachGone('lightConeDeg', known, [0, 1, 2])).toEqual(gaps([0, 1, 2]));
    expect(of('lightConeDeg', un('/a'), un('/n'), 4, 60)).toEqual(un('/a', '/n'));
  });
  it('grows by what the sensor stands beyond the focus', () => {
    // n s f_o² / (f F): 1.5 · 2 · 400 / (200 · 100).
    expect(of('subjectNearer', 1.5, 2, 20, 200, 100)).toBeCloseTo(0.06, 12);
    expect([of('clearWorkingDistanceMm', 10, 0.06), of('clearWorkingDistanceMm', 10, 11)]).toEqual([9.94, 0]);
  });
});

describe('the length of the rig', () => {
  it('goes by the length given, else by the thin lens in its principal plane', () => {
    expect([of('rimToFocus', 190, 10, 200), of('rimToFocus', un('/g'), 10, 200)]).toEqual([190, 210]);
    expect(of('rimToFocus', un('/g'), 10, un('/f'))).toEqual(un('/f'));
  });
  it('is none where the sensor would stand before the rim', () => {
    expect([of('totalLengthMm', 60, 10, -9.5), of('totalLengthMm', 60, 10, 3)]).toEqual([60.5, 73]);
    expect(of('totalLengthMm', 60, 10, -10)).toMatchObject({ state: 'none' });
    expect(of('totalLengthMm', 60, 10, -11)).toMatchObject({ state: 'none' });
  });
});

describe("the relay's openings", () => {
  const rim = (diameterMm: number) => ({ label: "the relay's rim", path: '/relay/clearApertureMm', diameterMm, place: 'relay', atMm: 0 });
  const aperture = (diameterMm: number, path: string) => ({
    label: "the camera lens's aperture",
    path,
    diameterMm,
    place: 'relay',
    atMm: 70,
  });

  it('are its rim alone, but of a camera lens', () => {
    expect(of('relayOpenings', 'tube-lens', 40, 30, 4, 70, 200)).toEqual([rim(40)]);
    expect(of('relayOpenings', 'supplementary', un('/r'), un('/p'), un('/N'), un('/d'), 200)).toEqual(un('/r'));
  });
  it('are with its aperture by diameter, else by f-number', () => {
    const lens = (...rest: unknown[]) => of('relayOpenings', 'camera-lens', ...rest);
    expect(lens(60, 45, 4, 70, 200)).toEqual([rim(60), aperture(45, '/relay/entrancePupilDiameterMm')]);
    expect(lens(60, un('/p'), 4, 70, 200)).toEqual([rim(60), aperture(50, '/relay/fNumber')]);
    expect(lens(60, un('/p'), un('/N'), 70, 200)).toEqual(un('/relay/fNumber'));
    expect(lens(60, un('/p'), 4, 70, un('/f'))).toEqual(un('/relay/fNumber'));
    expect(lens(un('/r'), 45, 4, 70, 200)).toEqual(un('/relay/clearApertureMm'));
    expect(lens(60, 45, 4, un('/d'), 200)).toEqual(un('/relay/clearApertureMm'));
  });
  it("stand behind the objective's pupil, which is where distances begin", () => {
    const ring = { label: 'a ring', path: '/stops/0/diameterMm', diameterMm: 20, place: 'shoulder', atMm: 8 };
    expect(of('rig', 10, [ring], [rim(40)], 60, -5, 3, 200, 0)).toEqual({
      stops: [{ label: "the objective's own pupil", path: '', diameterMm: 10, place: 'pupil', atMm: 0 }, ring, rim(40)],
      infinitySpaceMm: 60,
      exitPupilFromShoulderMm: -5,
      principalPlaneFromRimMm: 3,
      relayFocalLengthMm: 200,
      sensorOffsetMm: 0,
    });
  });
});

describe('the smallest of the circles', () => {
  it('counts the known ones alone', () => {
    expect(of('coveredShare', 0.8, un('/lit'), 0.9)).toBe(0.8);
    expect(of('coveredShare', un('/a'), 0.7, un('/c'))).toBe(0.7);
    expect(of('coveredShare', un('/a'), un('/b'), un('/c'))).toEqual(un('/a', '/b', '/c'));
    // 30 of 30, 40 and an unknown one, at 10 to 1.
    expect(of('goodFieldMm', 40, 30, un('/c'), 10)).toBe(3);
    expect(of('goodFieldMm', un('/a'), un('/b'), 20, 10)).toBe(2);
    expect(of('goodFieldMm', un('/a'), un('/b'), un('/c'), 10)).toEqual(un('/a', '/b', '/c'));
    expect(of('goodFieldMm', 40, 30, un('/c'), un('/m'))).toEqual(un('/c', '/m'));
  });
  it('shares no more than all of the sensor', () => {
    expect([of('correctedShare', 48, 6, 8), of('litShare', 24, 6, 8), of('sharpShare', 48.0000001, 6, 8)]).toEqual([1, 0.5, 1]);
    expect(of('correctedShareArea', 1e9, 6, 8)).toBe(48);
    expect(of('correctedShareArea', 4, 6, 8)).toBeCloseTo(4 * Math.PI, 12);
  });
});

describe('the relay that would cover', () => {
  it('by the field is the diagonal over the field number, off the focus by as much more', () => {
    const known = [25, 200, 50, 0, 60];
    expect(of('coveringByField', ...known)).toBeCloseTo(400, 9);
    expect(withEachGone('coveringByField', known)).toEqual(gaps([0, 1, 2, 3, 4]));
    expect(of('coveringByField', un('/FN'), un('/ref'), 50, 0, 60)).toEqual(un('/FN', '/ref'));
  });
  it('by the light is not known without the openings', () => {
    expect(of('coveringByBoth', un('/r'), 0.5, 43, un('/r'), 400)).toEqual(un('/r'));
    expect(of('coveringByBoth', un('/r'), 0.5, 43, 0.1, 400)).toEqual(un('/r'));
    expect(of('coveringByBoth', { stops: [] }, 0.5, 43, un('/s'), 400)).toEqual(un('/s'));
  });
  it('is that of both, or of the field alone where the light is not known', () => {
    const none = Gap.none('no relay');
    expect(of('shortestCoveringFocalLengthMm', 400, 500)).toBe(500);
    expect(of('shortestCoveringFocalLengthMm', 400, none)).toBe(none);
    expect(of('shortestCoveringFocalLengthMm', 400, un('/r'))).toBe(400);
    expect(of('shortestCoveringFocalLengthMm', un('/FN'), 500)).toBe(500);
    expect(of('shortestCoveringFocalLengthMm', un('/FN'), un('/r'))).toEqual(un('/FN', '/r'));
  });
});

describe('sharpness', () => {
  it('is judged at the detail asked for, else at half of what optics and pixels both pass', () => {
    expect(of('sharpDetail', 30, 100, 120)).toBe(30);
    expect([of('sharpDetail', un('/d'), 100, 120), of('sharpDetail', un('/d'), 120, 100)]).toEqual([50, 50]);
    expect(of('sharpDetail', un('/d'), 100, un('/p'))).toBe(50);
    expect(of('sharpDetail', un('/d'), un('/c'), 120)).toEqual(un('/c'));
    expect(of('goodField', 20, 22)).toBe(20);
    expect(of('goodField', un('/t'), 22)).toBe(22);
  });
  it('asks the glass for all that it hangs on', () => {
    const asked: unknown[] = [];
    const glass = {
      sharpRadiusMm: (question: unknown) => {
        asked.push(question);
        return 12;
      },
    };
    const discs = { radius: [5] };
    const judged = { relativeContrast: 0.8, focus: 'stack', spectrum: 'photopic', wavelengthNm: 550 };
    const known = [glass, discs, 100, 60, judged, 40, 200];
    expect(of('tracedCircle', ...known)).toBe(24);
    expect(asked).toEqual([
      {
        discs,
        pupilDistanceMm: 100,
        frequencyLpPerMm: 60,
        relativeContrast: 0.8,
        focus: 'stack',
        spectrum: 'photopic',
        wavelengthNm: 550,
        scaleMm: 200,
        // Half-diagonals of 20, and one and a half of them.
        limitMm: 30,
      },
    ]);
    expect(withEachGone('tracedCircle', known, [0, 1, 3, 6])).toEqual(gaps([0, 1, 3, 6]));
    expect(of('tracedCircle', un('/g'), discs, 100, un('/f'), judged, 40, 200)).toEqual(un('/g', '/f'));
  });
  it('is as traced, else as rated; without either both would tell', () => {
    expect([of('sharpCircleMm', 24, 30), of('sharpCircleMm', un('/relay/glass'), 30)]).toEqual([24, 30]);
    expect(of('sharpCircleMm', un('/relay/glass'), un('/relay/imageCircleMm'))).toEqual(un('/relay/glass', '/relay/imageCircleMm'));
    expect(of('sharpCircleMm', un('/relay/clearApertureMm'), un('/relay/imageCircleMm'))).toEqual(un('/relay/clearApertureMm'));
  });
});

describe('pixels', () => {
  const missing = un('/sensor/pixelPitchUm');
  it('have their pitch as given, else of the width and the columns', () => {
    expect([of('pitch', 4, 36, 6000), of('pitch', un('/p'), 36, 6000)]).toEqual([4, 6]);
    expect([of('pitch', un('/p'), un('/W'), 6000), of('pitch', un('/p'), 36, un('/n'))]).toEqual([missing, missing]);
  });
  it('are counted, else as many as fit', () => {
    expect(of('pixelCount', 6000, 4000, 36, 24, 6)).toBe(24);
    // 36 · 24 / 4² = 54 million.
    expect(of('pixelCount', un('/x'), un('/y'), 36, 24, 4)).toBe(54);
    expect([of('pixelCount', 6000, un('/y'), 36, 24, 4), of('pixelCount', un('/x'), 4000, 36, 24, 4)]).toEqual([54, 54]);
    const none = un('/x');
    expect([
      of('pixelCount', none, none, un('/W'), 24, 4),
      of('pixelCount', none, none, 36, un('/H'), 4),
      of('pixelCount', none, none, 36, 24, un('/p')),
    ]).toEqual([missing, missing, missing]);
  });
  it('record no finer than two of them', () => {
    expect([of('resolvedDetailUm', 1.2, 0.43), of('resolvedDetailUm', 1.2, 0.75)]).toEqual([1.2, 1.5]);
    // 4 · 36 · 24 mm² at 550 nm and f/20: (λN)² = 1.21e-4 mm², so 28.56 million.
    expect(of('opticalDetailMegapixels', 36, 24, 5.5e-4, 20)).toBeCloseTo(28.562, 3);
    expect(of('recordedDetailMegapixels', 28, 24, 0.5)).toBe(12);
  });
  it('keep of contrast at their limit what a round pupil and a square pixel leave', () => {
    // At half the cut-off: (2/π)(acos ½ - ½ √¾), and a pixel of half a period: 2/π.
    const pupil = (2 / Math.PI) * (Math.PI / 3 - Math.sqrt(0.75) / 2);
    expect(of('contrastAtNyquist', 100, 200)).toBeCloseTo((pupil * 2) / Math.PI, 12);
  });
});

describe('light in the corner', () => {
  it('is the shared area, less what the mapping takes of cos⁴', () => {
    expect(of('cornerIllumination', 30, 60, 0.5, 0)).toBe(0.5);
    // tan θ = ½: cos⁴θ = 1 / 1.25² = 0.64.
    expect(of('cornerIllumination', 30, 60, 0.5, 1)).toBeCloseTo(0.32, 12);
    expect(of('cornerIllumination', 30, 60, 0.5, 0.5)).toBeCloseTo(0.41, 12);
    expect(of('cornerIllumination', 60.00001, 60, 0.5, 0)).toBe(1);
  });
  it('is told in stops and as the f-number of what is left', () => {
    expect([of('cornerLossEv', 0.25), of('cornerLossEv', 1)]).toEqual([2, 0]);
    expect([of('cornerFNumber', 20, 15, 60), of('cornerFNumber', 20, 60.00001, 60)]).toEqual([40, 20]);
  });
  it('is known at half without being looked for again', () => {
    expect(of('litSlope', undefined, 0.5, 0.123)).toBe(0.123);
  });
});

describe('steps of a stack and lengths given one way or another', () => {
  it('are counted from the first frame', () => {
    // 100 µm in frames of 10 that share a fifth: 1 + ⌈90 / 8⌉.
    expect(of('framesForSubject', 0.1, 10)).toBe(13);
    expect(of('framesForSubject', 0.005, 10)).toBe(1);
    expect(of('framesForSubject', 0.0101, 10)).toBe(2);
    expect([of('blur', 7, 4), of('blur', un('/b'), 4)]).toEqual([7, 4]);
  });
  it('are the one or the other', () => {
    expect([of('relayFocalLengthMm', 198, 5), of('relayFocalLengthMm', un('/f'), 5)]).toEqual([198, 200]);
    expect(of('relayFocalLengthMm', un('/f'), un('/P'))).toEqual(un('/relay/focalLengthMm'));
    for (const id of ['subjectSideA', 'subjectSideB'])
      expect([of(id, 3, 2), of(id, un('/w'), 2), of(id, un('/w'), un('/h'))]).toEqual([3, 2, un('/subject/widthMm')]);
    expect(of('principalPlaneDistance', 60, -5, 3)).toBe(68);
  });
});

describe('what figures are bounded by', () => {
  it('is what can be', () => {
    const bounds = Object.fromEntries(FIGURES.map((f) => [f.id, f.bounds]));
    for (const id of ['correctedShare', 'litShare', 'sharpShare', 'coveredShare', 'cornerIllumination', 'contrastAtNyquist'] as const)
      expect(bounds[id], id).toEqual([0, 1]);
    expect(bounds.cornerChiefRayDeg).toEqual([-90, 90]);
    expect(bounds.lightConeDeg).toEqual([0, 90]);
    expect(bounds.framesForSubject).toEqual([1, Number.POSITIVE_INFINITY]);
    expect(bounds.magnificationChangePerMm).toEqual([Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]);
    const { noneCountsAs } = FIGURES.find(({ id }) => id === 'shortestCoveringFocalLengthMm') as (typeof FIGURES)[number];
    expect(noneCountsAs).toBe(Number.POSITIVE_INFINITY);
  });
});
