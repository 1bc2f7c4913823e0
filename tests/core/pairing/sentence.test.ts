import { describe, expect, it } from 'vitest';
import { type Pairing, report } from '../../../core/index.ts';

/** Sentences word for word, their numbers worked out here by plain arithmetic. */
const base: Pairing = {
  objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, fieldNumberMm: 22, exitPupilFromShoulderMm: 0 },
  relay: { kind: 'supplementary', focalLengthMm: 200, clearApertureMm: 54, frontPrincipalPlaneFromRimMm: 0 },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 },
  infinitySpaceMm: 60,
};
const say = (change: Partial<Pairing>) => report({ ...base, ...change }).sentence;
const objective = (more: object) => ({ objective: { ...base.objective, ...more } });
const relay = (more: object) => ({ relay: { ...base.relay, ...more } });

const diagonal = Math.hypot(36, 24);
const round = (x: number) => String(Number(x.toPrecision(3)));
/** Three digits, on the safe side of numbers between 10 and 1000. */
const up = (x: number) => (x >= 100 ? String(Math.ceil(x)) : String(Math.ceil(10 * x) / 10));
const down = (x: number) => (x >= 100 ? String(Math.floor(x)) : String(Math.floor(10 * x) / 10));
const crop = (d: number) => `${round((36 * d) / diagonal)} × ${round((24 * d) / diagonal)} mm`;

describe('the answer in words', () => {
  it('covers: what is seen, how far the field reaches, the light, and what is not known', () => {
    expect(say(objective({ fieldNumberMm: 44 }))).toBe(
      `At 10× the picture is covered to the corners, 3.6 × 2.4 mm of subject: the objective's field reaches ${round((44 - diagonal) / 2)} mm past them. Light reaches the corners fully. How sharp the relay is out there is not known.`,
    );
  });
  it('crops: what to keep, what bites by how much, and the relay that would cover', () => {
    expect(say({})).toBe(
      `At 10×, keep the middle ${crop(22)} of the picture: the objective's field ends ${round((diagonal - 22) / 2)} mm short of the corners. Light reaches the corners fully. A ${up((diagonal * 200) / 22)} mm relay would cover. How sharp the relay is out there is not known.`,
    );
  });
  it('says where the field is only taken as typical', () => {
    expect(say(objective({ fieldNumberMm: { value: 30, plusMinus: 2, origin: 'assumed' } }))).toContain(
      "the objective's field, taken as typical, ends",
    );
  });
  it('says so where the doubt is only about half of the width', () => {
    expect(say(objective({ fieldNumberMm: { value: 22, plusMinus: 2, origin: 'assumed' } }))).toMatch(
      /^At 10×, keep the middle 18\.3 × 12\.2 mm of the picture, and whether that is half of its width hangs on the objective's field number: the objective's field, taken as typical, ends 10\.6 mm short/,
    );
  });
  it('misses', () =>
    expect(say(objective({ fieldNumberMm: 12 }))).toMatch(
      /^At 10× this pairing misses the sensor, only the middle 9\.98 × 6\.66 mm of it counts: the objective's field ends 15\.6 mm short/,
    ));

  it('names the rim, the light it leaves and the space that would clear it', () => {
    const dim = { ...objective({ fieldNumberMm: 60 }), ...relay({ clearApertureMm: 14 }), infinitySpaceMm: 90 };
    const clear = ((14 - 10) * 200) / diagonal;
    const said = say(dim);
    expect(said).toMatch(/the relay's 14 mm rim leaves the corners \d+ % of the light/);
    expect(said).toContain(`With an infinity space of ${down(clear)} mm instead of 90 they would get all of it.`);
  });
  it('tells a beam cut whole as no light', () => {
    const said = say({ ...objective({ fieldNumberMm: 60 }), ...relay({ clearApertureMm: 11 }), infinitySpaceMm: 400 });
    expect(said).toContain("the relay's 11 mm rim leaves the corners no light");
  });
  it('names a remedy that does what it says', () => {
    const dim = { ...objective({ fieldNumberMm: 30 }), ...relay({ clearApertureMm: 14 }), infinitySpaceMm: 90 };
    const length = Number(/A (\d+) mm relay would cover/.exec(say(objective({ fieldNumberMm: 30 })))?.[1]);
    expect(report({ ...base, ...objective({ fieldNumberMm: 30 }), ...relay({ focalLengthMm: length }) }).coverage.verdict).toBe('covers');
    const space = Number(/infinity space of ([\d.]+) mm/.exec(say({ ...dim, ...objective({ fieldNumberMm: 60 }) }))?.[1]);
    const cleared = report({ ...base, ...dim, infinitySpaceMm: space }).figures.cornerIllumination;
    expect(cleared).toMatchObject({ state: 'known', value: 1 });
  });
  it('brings the relay nearer where no space gives the corners all of the light', () => {
    // The share is told in whole per cent: over several rims one of a hundredth more or less would show.
    for (let rim = 10.75; rim <= 13.25; rim += 0.25) {
      const far = { ...objective({ fieldNumberMm: 60 }), ...relay({ focalLengthMm: 60, clearApertureMm: rim }), infinitySpaceMm: 200 };
      const told = /With an infinity space of 20 mm instead of 200 they would get (\d+) %\./.exec(say(far))?.[1];
      const there = report({ ...base, ...far, infinitySpaceMm: 20 }).figures.cornerIllumination;
      expect(there.state === 'known' && Math.round(100 * there.value)).toBe(Number(told));
    }
  });
  it('lays what only the mapping can cost to the mapping', () => {
    const wide = say({ ...objective({ fieldNumberMm: 60 }), ...relay({ focalLengthMm: 85, clearApertureMm: 80 }), infinitySpaceMm: 20 });
    expect(wide).toMatch(/The corners get all of the light, or 8\d % by the way the relay maps angles\./);
  });
  it('tells a wide spread of light and what would narrow it, once', () => {
    const dim = {
      ...objective({ fieldNumberMm: 60, exitPupilFromShoulderMm: { value: 0, plusMinus: 30, origin: 'assumed' } }),
      ...relay({ clearApertureMm: 20 }),
      infinitySpaceMm: 90,
    };
    expect(say(dim)).toMatch(
      /^At 10×, whether the corners are covered hangs on where the exit pupil sits: the relay's 20 mm rim leaves the corners \d+ % of the light, anywhere from \d+ to \d+ %\. With/,
    );
    // Where the verdict does not hang on it, it is named with the light.
    const narrower = objective({ fieldNumberMm: 60, exitPupilFromShoulderMm: { value: 0, plusMinus: 8, origin: 'assumed' } });
    expect(say({ ...dim, ...narrower, litThreshold: 0.7 })).toMatch(
      /^At 10×, keep the middle .*: the relay's 20 mm rim leaves the corners \d+ % of the light, anywhere from \d+ to \d+ % until you locate the exit pupil\./,
    );
  });
  it('tells the light that may be lost, or gained, from the end where it stands', () => {
    const doubtful = objective({ fieldNumberMm: 44, exitPupilFromShoulderMm: { value: 0, plusMinus: 30, origin: 'assumed' } });
    expect(say({ ...doubtful, ...relay({ clearApertureMm: 20 }), infinitySpaceMm: 40 })).toMatch(
      /The corners get all of the light, or as little as \d+ %\./,
    );
    const dark = { ...objective({ fieldNumberMm: 60, exitPupilFromShoulderMm: { value: 0, plusMinus: 30, origin: 'assumed' } }) };
    expect(say({ ...dark, ...relay({ clearApertureMm: 20 }), infinitySpaceMm: 150 })).toMatch(
      /leaves the corners no light, or as much as \d+ %/,
    );
  });
  it('covers with a rated relay: nothing is left open', () => {
    expect(say({ ...objective({ fieldNumberMm: 44 }), ...relay({ imageCircleMm: 60 }) })).toBe(
      `At 10× the picture is covered to the corners, 3.6 × 2.4 mm of subject: the objective's field reaches ${round((44 - diagonal) / 2)} mm past them. Light reaches the corners fully.`,
    );
  });
  it('misses by the rating: how far it ends short, and what would do', () => {
    expect(say({ ...objective({ fieldNumberMm: 60 }), ...relay({ imageCircleMm: 20 }) })).toBe(
      `At 10× this pairing misses the sensor, only the middle ${crop(20)} of it counts: the relay's rated circle ends ${round((diagonal - 20) / 2)} mm short of the corners. Light reaches the corners fully. A relay rated for ${up(diagonal)} mm would cover.`,
    );
  });
  it('is undecided by the rating, or by the field: what it hangs on, and the relay that surely would do', () => {
    expect(
      say({ ...objective({ fieldNumberMm: 60 }), ...relay({ imageCircleMm: { value: 44, plusMinus: 2, origin: 'assumed' } }) }),
    ).toMatch(
      new RegExp(
        `^At 10×, whether the corners are covered hangs on the relay's rated circle: the relay's rated circle reaches ${round((44 - diagonal) / 2)} mm past the corners\\.`,
      ),
    );
    const field = say(objective({ fieldNumberMm: { value: 44, plusMinus: 2, origin: 'assumed' } }));
    expect(field).toMatch(
      /^At 10×, whether the corners are covered hangs on the objective's field number: the objective's field, taken as typical, reaches/,
    );
    expect(field).toContain(`One that measures ${up((diagonal * 200) / 42)} mm would surely cover.`);
  });
  it('promises a relay that surely covers only where light and rating are sure', () => {
    const field = objective({ fieldNumberMm: { value: 30, plusMinus: 2, origin: 'assumed' } });
    const pupil = { value: 0, plusMinus: 30, origin: 'assumed' } as const;
    const dim = {
      objective: { ...field.objective, exitPupilFromShoulderMm: pupil },
      ...relay({ clearApertureMm: 16 }),
      infinitySpaceMm: 90,
    };
    expect(say(dim)).toMatch(/mm relay would cover\./);
    expect(say({ ...field, ...relay({ imageCircleMm: { value: 44, plusMinus: 2, origin: 'assumed' } }) })).toMatch(
      /mm relay would cover\./,
    );
    const surely = Number(/one that measures (\d+) mm surely/.exec(say(field))?.[1]);
    expect(report({ ...base, ...field, ...relay({ focalLengthMm: surely }) }).coverage.verdict).toBe('covers');
  });
  it('names a longer relay, and its rating, where the rating alone would not do', () => {
    const both = say({ ...objective({ fieldNumberMm: 24 }), ...relay({ imageCircleMm: 20 }) });
    expect(both).toContain(`the relay's rated circle ends ${round((diagonal - 20) / 2)} mm short`);
    expect(both).toContain(`A ${up((diagonal * 200) / 24)} mm relay would cover, if it is rated for ${up(diagonal)} mm.`);
  });
  it('says so where no relay would do', () => {
    expect(say(objective({ fieldNumberMm: 8 }))).toContain('No relay up to 1000 mm would cover.');
  });
  it('asks for what is not known', () => {
    const { fieldNumberMm: _, ...unrated } = base.objective;
    const { clearApertureMm: __, ...open } = base.relay;
    expect(say({ objective: unrated })).toBe(
      'At 10× the picture shows 3.6 × 2.4 mm, and whether it is good to the corners is open. Light reaches the corners fully. How far the objective stays corrected is not known: give its field number. How sharp the relay is out there is not known.',
    );
    expect(say({ relay: open })).toContain("How much light the corners get is not known: give the relay's clear opening.");
  });
  it('says which rated circle would do where that one bites', () => {
    expect(say({ ...objective({ fieldNumberMm: 60 }), ...relay({ imageCircleMm: 30 }) })).toContain(
      `the relay's rated circle ends ${round((diagonal - 30) / 2)} mm short of the corners. Light reaches the corners fully. A relay rated for ${up(diagonal)} mm would cover.`,
    );
  });
  it('answers for the subject', () => {
    expect(say({ subject: { widthMm: 1.2, heightMm: 1.5 } })).toMatch(/The subject, 15 × 12 mm on the sensor, is covered\.$/);
    expect(say({ subject: { widthMm: 1.2, heightMm: 2 } })).toMatch(/is not covered to its edges\.$/);
    expect(say({ subject: { widthMm: 5 } })).toMatch(/The subject, 50 × 50 mm on the sensor, is larger than the picture\.$/);
  });

  it('does not promise what a rating alone cannot do', () => {
    const short = say({
      ...objective({ fieldNumberMm: 24 }),
      ...relay({ focalLengthMm: 150, clearApertureMm: 14, imageCircleMm: 10 }),
      infinitySpaceMm: 80,
    });
    expect(short).not.toContain('A relay rated for');
    const both = say({ ...objective({ fieldNumberMm: 24 }), ...relay({ imageCircleMm: 40 }) });
    expect(both).toContain(`A ${up((diagonal * 200) / 24)} mm relay would cover, if it is rated for ${up(diagonal)} mm.`);
  });
  it('gives the length that covers surely beside the one that may', () => {
    expect(say(objective({ fieldNumberMm: { value: 30, plusMinus: 2, origin: 'assumed' } }))).toMatch(
      new RegExp(`A ${up((diagonal * 200) / 30)} mm relay would cover, one that measures ${up((diagonal * 200) / 28)} mm surely\\.`),
    );
  });
  it('blames the ring that limits the axis, and opens it', () => {
    const ring = { stops: [{ label: 'the adapter ring', diameterMm: 10, fromShoulderMm: 80 }], infinitySpaceMm: 90 };
    const said = say({ ...objective({ na: 0.28, fieldNumberMm: 60 }), ...ring });
    expect(said).toMatch(/the adapter ring leaves the corners \d+ % of the light\./);
    const opening = Number(/An opening of ([\d.]+) mm there/.exec(said)?.[1]);
    const opened = { ...ring, stops: [{ ...ring.stops[0], diameterMm: opening, fromShoulderMm: 80 }] };
    expect(report({ ...base, ...objective({ na: 0.28, fieldNumberMm: 60 }), ...opened }).figures.cornerIllumination).toMatchObject({
      value: 1,
    });
  });
  it('names no infinity space that nobody could build', () => {
    const said = say({ ...objective({ fieldNumberMm: 60 }), ...relay({ clearApertureMm: 10.4 }), infinitySpaceMm: 200 });
    expect(said).not.toContain('With an infinity space');
    expect(said).toContain('An opening of');
  });
});

describe('the shortest covering focal length behind a throat', () => {
  it('is one that is lit, or none', () => {
    const throat = { sensor: { ...base.sensor, registerMm: 44, throatDiameterMm: 38 }, ...objective({ na: 0.28, fieldNumberMm: 24 }) };
    const { figures, sentence } = report({ ...base, ...throat, ...relay({ focalLengthMm: 150, clearApertureMm: 40 }) });
    expect(figures.shortestCoveringFocalLengthMm.state).toBe('none');
    expect(sentence).toContain('ends ');
    expect(sentence).toContain('No longer relay alone would cover.');
    const wide = report({
      ...base,
      ...throat,
      sensor: { ...throat.sensor, throatDiameterMm: 60 },
      ...relay({ focalLengthMm: 150, clearApertureMm: 40 }),
    });
    expect(wide.figures.shortestCoveringFocalLengthMm).toMatchObject({ state: 'known', value: expect.closeTo((diagonal * 200) / 24, 6) });
  });
});
