import { figure, openStep } from '../../figure.ts';
import { clearWorkingDistanceMm, subjectNearer } from '../../pairing/bench.ts';
import { subjectDepth, workingDistance } from '../../pairing/leaves.ts';
import { focusPerRail } from '../stack/steps.ts';
import { inTheWay } from './settings.ts';

/** The nose over the stage while the rail drives it from the front of the subject to its back. */

export const noseClearanceMm = figure({
  id: 'noseClearanceMm',
  unit: 'mm',
  symbol: 'a_n',
  words:
    "what is left between the nose and the front of the subject, or what stands up before it, when the subject's back is in focus; below 0 they meet",
  source: "working distance, less what a sensor off the focus takes of it, the rail's way through the subject and what is in the way",
  needs: [workingDistance, subjectNearer, subjectDepth, focusPerRail, inTheWay.leaf],
  of: (a, nearer, d, q, w) => a - nearer - d / q - w,
  as: (a, nearer, d, q, w) => `${a} − ${nearer} − ${d} / ${q} − ${w}`,
  bounds: [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY],
});

/** In air that is the free space itself; the focus runs ahead of the rail in a medium, and the nose stays higher. */
export const noseOverBack = openStep({
  id: 'noseOverBack',
  symbol: 'a_b',
  unit: 'mm',
  words:
    "height of the nose above the plane of the subject's back when that is in focus; of a subject of unknown depth, above the plane in focus",
  needs: [clearWorkingDistanceMm, subjectDepth, focusPerRail],
  of: (a, d, q) => (typeof a === 'number' && typeof d === 'number' && typeof q === 'number' ? a + d - d / q : a),
  as: (a, d, q) => (d ? `${a} + ${d} − ${d} / ${q}` : a),
});
