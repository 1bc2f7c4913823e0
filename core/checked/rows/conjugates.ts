import { gap, thinLens, train } from '../../index.ts';
import type { Check } from '../check.ts';
import { image } from '../image.ts';
import { type Changes, figureValue } from '../rig.ts';

/** An objective of 6.00 mm with the subject at 6.20 mm, up to the image that it forms by itself. */
const OBJECTIVE = [gap(6.2), thinLens(6)] as const;

/** The eyepiece of 50.0 mm stands 230 mm behind it. */
const EYEPIECE = [gap(230), thinLens(50)] as const;

/**
 * The same 180 mm behind the back focus, off infinity: the sensor where the objective alone would form
 * its image, with a relay right in that plane, where its power changes nothing.
 */
const OFF_INFINITY: Changes = {
  objective: { referenceFocalLengthMm: 60 },
  relay: { focalLengthMm: 400 },
  infinitySpaceMm: 180,
  sensorOffsetMm: -400,
};

/** A stop 180 mm behind the exit pupil of an objective of 6 mm limits the beam. */
const STOP_AT_180: Changes = {
  objective: { referenceFocalLengthMm: 60 },
  relay: { clearApertureMm: 1 },
  infinitySpaceMm: 180,
};

/** 10x with the relay its own focal length from the exit pupil: one magnification at any focus. */
const TELECENTRIC: Changes = { infinitySpaceMm: 200, sensorOffsetMm: 1 };
const tenTimes = (subjectMm: number) => train(gap(subjectMm), thinLens(20), gap(20 + 200), thinLens(200));

export const CONJUGATES: readonly Check[] = [
  {
    id: 'WD-001',
    claim: 'an objective of 6.00 mm with the subject at 6.20 mm: image at 186 mm, magnification −30.0',
    source: 'college-physics',
    known: 'read',
    how: 'ray matrices, and a pairing with its sensor at that image',
    values: [
      { what: 'image, mm', printed: '186', of: () => image(train(...OBJECTIVE)).distance },
      { what: 'magnification', printed: '−30.0', of: () => image(train(...OBJECTIVE)).magnification },
      figureValue('systemMagnification', '30.0', OFF_INFINITY, { what: 'as a pairing' }),
    ],
  },
  {
    id: 'WD-002',
    claim: 'its eyepiece of 50.0 mm, 230 mm behind: image at −367 mm, magnification 8.33, −250 in all',
    source: 'college-physics',
    known: 'read',
    how: 'ray matrices',
    values: [
      { what: 'image, mm', printed: '−367', of: () => image(train(...OBJECTIVE, ...EYEPIECE)).distance },
      // The first image, at the printed 186 mm, is the eyepiece's subject 44 mm before it.
      { what: 'eyepiece', printed: '8.33', of: () => image(train(gap(44), thinLens(50))).magnification },
      { what: 'in all', printed: '−250', of: () => image(train(...OBJECTIVE, ...EYEPIECE)).magnification },
    ],
  },
  {
    id: 'WD-003',
    claim: 'Newton: 0.2 mm beyond the front focus of 6 mm goes with 180 mm behind the back focus, x x′ = f²',
    source: 'college-physics',
    known: 'formula read',
    how: 'the change of scale with depth, with a stop at 180 mm: its image 0.2 mm from the front focus makes it 1/0.2 a mm',
    values: [
      { what: 'x′, mm', printed: '180', of: () => image(train(...OBJECTIVE)).distance - 6 },
      figureValue('magnificationChangePerMm', '5.000', STOP_AT_180, {
        what: '1/x',
        slack: { of: () => (5 * 0.5) / 180, why: 'x′, known to half a millimetre,' },
      }),
    ],
  },
  {
    id: 'WD-005',
    claim: 'longitudinal magnification is the lateral one squared: 100 at 10x',
    source: 'encyclopaedia-magnification',
    known: 'formula read',
    how: 'how far the image moves for 0.01 mm at the subject, through ray matrices; the pairing keeps its 10x there',
    values: [
      { what: 'lengthwise', printed: '100', of: () => (image(tenTimes(20 - 0.01)).distance - image(tenTimes(20)).distance) / 0.01 },
      figureValue('systemMagnification', '10', TELECENTRIC, { what: 'across, 1 mm off infinity' }),
    ],
  },
];
