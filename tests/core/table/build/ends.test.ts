import { describe, expect, it } from 'vitest';
import type { Relay } from '../../../../core/index.ts';
import type { Objective } from '../../../../core/parts/objective.ts';
import { cameraEnd, objectiveEnd, relayFront, relayRear, sideWords } from '../../../../core/table/build/ends.ts';
import { endWords } from '../../../../core/table/threads/thread.ts';

const objective = (mountThread?: string) => objectiveEnd({ magnification: 10, na: 0.25, mountThread } as Objective);
const relay = (more: Partial<Relay>): Relay => ({ kind: 'supplementary', ...more }) as Relay;
const told = (found: ReturnType<typeof relayFront>): string => ('end' in found ? endWords(found.end) : `${found.path}: ${found.unknown}`);
const both = (one: Relay) => [told(relayFront(one, {})), told(relayRear(one, {}))];

describe("the objective's end", () => {
  it('is male where nothing else is written, and else as it is written', () => {
    expect(objective('M25')).toMatchObject({ end: { sex: 'male', thread: { label: 'M25 x 0.75' } } });
    expect(objective('female M25')).toMatchObject({ end: { sex: 'female' } });
  });
  it('is asked for where it is not told, or what is told is no thread', () => {
    expect(objective()).toEqual({ unknown: "the objective's thread is not told", path: '/objective/mountThread' });
    expect(objective('bayonet')).toMatchObject({ unknown: expect.stringMatching(/‘bayonet’, names no thread: as in/) });
  });
});

describe("the relay's ends", () => {
  it('are male toward the objective and female behind, the other way where it is turned round', () => {
    const lens = relay({ maleThread: '58', femaleThread: '52' });
    expect(both(lens)).toEqual(['male M58 x 0.75', 'female M52 x 0.75']);
    expect(both({ ...lens, reversed: true })).toEqual(['female M52 x 0.75', 'male M58 x 0.75']);
    expect(relayFront(lens, {})).not.toHaveProperty('remark');
    expect(relayRear(lens, {})).not.toHaveProperty('remark');
  });

  it('are as wide as each other where one is not told, and that is said', () => {
    expect(both(relay({ maleThread: '58' }))).toEqual(['male M58 x 0.75', 'female M58 x 0.75']);
    expect(both(relay({ femaleThread: '52' }))).toEqual(['male M52 x 0.75', 'female M52 x 0.75']);
    expect(relayRear(relay({ maleThread: 'male 58' }), {})).toMatchObject({
      end: { sex: 'female' },
      remark: 'its female thread is taken as wide as its other one (common practice)',
    });
    expect(relayFront(relay({ maleThread: '58' }), {})).not.toHaveProperty('remark');
  });

  it('are asked for at the thread that would tell them', () => {
    expect(both(relay({}))).toEqual([
      "/relay/maleThread: the relay's male thread is not told",
      "/relay/femaleThread: the relay's female thread is not told",
    ]);
    expect(both(relay({ reversed: true }))[0]).toBe("/relay/femaleThread: the relay's female thread is not told");
    expect(relayRear(relay({ maleThread: 'bayonet' }), {})).toMatchObject({ path: '/relay/femaleThread' });
  });

  it('are what is told of them on the table, before all else', () => {
    const ask = { relayFront: { thread: '52', sex: 'female' }, relayRear: { thread: 'T', sex: 'male' } } as const;
    const lens = relay({ maleThread: '58' });
    expect(told(relayFront(lens, ask))).toBe('female M52 x 0.75');
    expect(told(relayRear(lens, ask))).toBe('male M42 x 0.75');
    expect(told(relayRear(relay({ kind: 'camera-lens' }), ask))).toBe('male M42 x 0.75');
  });
});

describe("a camera lens's ends", () => {
  const lens = (more: Partial<Relay>) => relay({ kind: 'camera-lens', ...more });

  it('are its filter thread, female, and its mount', () => {
    expect(both(lens({ femaleThread: '58' }))).toEqual(['female M58 x 0.75', '/relayRear: a camera lens ends in its mount']);
    expect(relayFront(lens({ femaleThread: '58', maleThread: '62' }), {})).toStrictEqual({
      end: { thread: expect.objectContaining({ diameterMm: 58 }), sex: 'female' },
    });
  });

  it('has a lone male thread taken for its filter thread, and that is said', () => {
    expect(relayFront(lens({ maleThread: 'male 58' }), {})).toMatchObject({
      end: { sex: 'female', thread: { diameterMm: 58 } },
      remark: expect.stringMatching(/female on camera lenses/),
    });
    expect(relayFront(lens({ femaleThread: '58' }), {})).not.toHaveProperty('remark');
  });

  it('is asked for where it was told, or where it would be', () => {
    expect(told(relayFront(lens({}), {}))).toBe("/relay/femaleThread: the camera lens's filter thread is not told");
    expect(told(relayFront(lens({ maleThread: 'M26' }), {}))).toMatch(
      /^\/relay\/maleThread: the camera lens's filter thread, ‘M26’, may be/,
    );
    expect(told(relayFront(lens({ femaleThread: 'M26' }), {}))).toMatch(/^\/relay\/femaleThread: /);
    expect(told(relayFront(lens({ femaleThread: 'M26', maleThread: '58' }), {}))).toMatch(/^\/relay\/femaleThread: /);
  });
});

it('tells which side faces the objective where a relay with glass in a mount has a thread', () => {
  expect(sideWords(relay({ maleThread: '58' }))).toBe('male thread toward the objective');
  expect(sideWords(relay({ femaleThread: '58', reversed: true }))).toBe('male thread toward the camera');
  expect(sideWords(relay({}))).toBeUndefined();
  expect(sideWords(relay({ kind: 'camera-lens', maleThread: '58' }))).toBeUndefined();
});

describe("the camera's end", () => {
  const camera = (thread: string, more: object = {}) => cameraEnd({ camera: { thread, ...more } });
  it('is a female T thread 55 mm before the sensor where nothing is told, and that is said', () => {
    const usual = cameraEnd({});
    expect(endWords(usual.end)).toBe('female M42 x 0.75');
    expect(usual).toMatchObject({
      fromSensorMm: 55,
      remark: 'its seat is taken 55 mm before the sensor, as is common practice for this thread',
    });
  });
  it('stands where its thread usually does, where it is told, or nobody knows where', () => {
    // 0.690 in, and the old screw mount.
    expect(camera('C', { sex: 'male' })).toMatchObject({ fromSensorMm: 17.526, end: { sex: 'male' } });
    expect(0.69 * 25.4).toBeCloseTo(17.526, 9);
    expect(camera('M42 x 1').fromSensorMm).toBe(45.46);
    const told = camera('T', { fromSensorMm: 12 });
    expect([told.fromSensorMm, 'remark' in told]).toEqual([12, false]);
    const unknown = camera('58');
    expect([unknown.fromSensorMm, 'remark' in unknown]).toEqual([undefined, false]);
  });
});
