import { describe, expect, it } from 'vitest';
import { Gap, type Node } from '../../../../core/figure.ts';
import { clearWorkingDistanceMm } from '../../../../core/pairing/bench.ts';
import { objectFieldDiagonalMm } from '../../../../core/pairing/first-order.ts';
import { subjectDepth } from '../../../../core/pairing/leaves.ts';
import { foot, top } from '../../../../core/table/light/diffuser.ts';
import { noseOverBack } from '../../../../core/table/light/nose.ts';
import { middleSlope, noseEnd, noseWhole, sineOfCone } from '../../../../core/table/light/room.ts';
import { diffuserHeight, diffuserThickness, noseTaper } from '../../../../core/table/light/settings.ts';
import { sideViewOf } from '../../../../core/table/light/side.ts';

/** 10 mm free under a nose of 30 mm, whose end is 8 mm wide with a taper of 6. */
const NODES = {
  free: [clearWorkingDistanceMm, 10],
  over: [noseOverBack, 10.2],
  slope: [middleSlope, 16 / 15],
  field: [objectFieldDiagonalMm, 1.2],
  sine: [sineOfCone, 0.6],
  nose: [noseWhole, 30],
  end: [noseEnd, 8],
  taper: [noseTaper.leaf, 6],
  depth: [subjectDepth, 0.4],
  foot: [foot, 14],
  top: [top, 12],
  height: [diffuserHeight.leaf, 20],
  wall: [diffuserThickness.leaf, 0.5],
} as const satisfies Record<string, readonly [Node, number]>;
type Name = keyof typeof NODES;

function view(more: Partial<Record<Name, number | Gap>> = {}) {
  const entries = Object.entries(NODES) as [Name, readonly [Node, number]][];
  const place = new Map(entries.map(([, [node]], i) => [node, i]));
  const sheet = entries.map(([name, [, value]]) => more[name] ?? value);
  return sideViewOf({ graph: { place }, sheet } as unknown as Parameters<typeof sideViewOf>[0]);
}
const GAP = Gap.unknown('/a');

describe('the view from the side', () => {
  it('has whole widths, heights and slopes of all that stands over the subject', () => {
    expect(view()).toStrictEqual({
      freeMm: 10,
      noseOverBackMm: 10.2,
      noseMm: 30,
      noseEndMm: 8,
      taperMm: 6,
      fieldMm: 1.2,
      depthMm: 0.4,
      lightSlope: 16 / 15,
      // A sine of 0.6 has a tangent of 0.75.
      coneSlope: expect.closeTo(0.75, 12),
      byRelay: false,
      diffuser: { foot: 14, top: 12, height: 20, wall: 0.5 },
    });
  });

  it.each(['free', 'over', 'slope', 'field', 'sine', 'nose', 'end', 'taper'] as const)('is not drawn without %s', (name) => {
    expect(view({ [name]: GAP })).toBeUndefined();
  });

  it.each(['foot', 'top', 'height', 'wall'] as const)('has no diffuser without its %s', (name) => {
    expect(view({ [name]: GAP })).not.toHaveProperty('diffuser');
    expect(view({ [name]: GAP })?.freeMm).toBe(10);
  });

  it('shows a subject of unknown depth as flat', () => expect(view({ depth: GAP })?.depthMm).toBe(0));

  it('tells whether the relay is in the way, not the nose: its light is lower than past the end and past the whole width', () => {
    // Past the whole width 16 / 15, past the end 10 / 4.
    expect(view({ slope: 1.05 })?.byRelay).toBe(true);
    expect(view({ slope: (16 / 15) * (1 - 1e-14) })?.byRelay).toBe(false);
    // An end of 24: 10 / 12.
    expect(view({ slope: 10 / 12, end: 24 })?.byRelay).toBe(false);
    expect(view({ slope: 0.82, end: 24 })?.byRelay).toBe(true);
  });
});
