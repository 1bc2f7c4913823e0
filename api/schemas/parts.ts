import { z } from '@hono/zod-openapi';
import { type OwnPart, objectiveSchema, ownId, ownPartSchema, relaySchema, sensorSchema } from '../../core/index.ts';
import { exactly } from './exactly.ts';

/**
 * The three parts, as core reads them, and the two other ways in which a request may name one. They are
 * made anew from core's fields: core's own schemas may be older than the `openapi` method.
 */
export const objective = z.strictObject(objectiveSchema.shape).openapi('Objective');
export const relay = z.strictObject(relaySchema.shape).openapi('Relay');
export const sensor = z.strictObject(sensorSchema.shape).openapi('Sensor');

const partId = z.string().min(1).max(120).openapi('PartId', { description: 'the id of a part that GET /api/parts lists' });

const threeWays = <S extends z.ZodObject>(part: S, name: string) =>
  z.union([
    partId,
    part.partial().extend({ from: partId }).openapi(`${name}From`, { description: 'a listed part with what differs' }),
    part,
  ]);

export const anyObjective = threeWays(objective, 'Objective');
export const anyRelay = threeWays(relay, 'Relay');
export const anySensor = threeWays(sensor, 'Sensor');

const [ownObjective, ownRelay, ownSensor] = ownPartSchema.options;
const { kind: _objective, part: objectivePart, ...story } = ownObjective.shape;

/** The part's own fields with its name, made anew as above. */
const named = <Shape extends z.ZodRawShape>({ shape }: z.ZodObject<Shape>, name: string) => z.strictObject(shape).openapi(name);
const ownParts = [
  z.strictObject({ kind: z.literal('objective'), ...story, part: named(objectivePart, 'NamedObjective') }),
  z.strictObject({ kind: z.literal('relay'), ...story, part: named(ownRelay.shape.part, 'NamedRelay') }),
  z.strictObject({ kind: z.literal('sensor'), ...story, part: named(ownSensor.shape.part, 'NamedSensor') }),
] as const;

const version = z.number().int().min(1).openapi({ description: 'grows by one with each change of the part; what If-Match names' });
const [anOwnObjective, anOwnRelay, anOwnSensor] = ownParts;

/** A part of one's own as a request may write it. */
export const ownPartRequest = exactly<OwnPart>()(z.discriminatedUnion('kind', ownParts).openapi('OwnPart'));

/** The same with the id that it shall have, if any. */
export const newPartRequest = z
  .discriminatedUnion('kind', [
    anOwnObjective.extend({ id: ownId.optional() }),
    anOwnRelay.extend({ id: ownId.optional() }),
    anOwnSensor.extend({ id: ownId.optional() }),
  ])
  .openapi('NewPart');

const kept = { id: ownId, version };

/** A part as the drawer keeps it. */
export const storedPartSchema = z
  .discriminatedUnion('kind', [anOwnObjective.extend(kept), anOwnRelay.extend(kept), anOwnSensor.extend(kept)])
  .openapi('StoredPart');

const said = z.strictObject({ ...story, version }).openapi('OwnStory', { description: "of a part of one's own only" });

/** Made anew again: an extended part would be described as the part, which is closed, and more beside it. */
const listed = <Shape extends z.ZodRawShape>({ shape }: z.ZodObject<Shape>, name: string) =>
  z
    .strictObject({ ...shape, id: partId, provenance: z.string(), own: said.optional() })
    .openapi(`Listed${name}`, { description: 'the part itself is all but id, provenance and own' });

const drawerState = z
  .discriminatedUnion('state', [
    z.strictObject({ state: z.literal('open'), revision: z.number().int().min(0), parts: z.number().int().min(0), file: z.string() }),
    z.strictObject({ state: z.literal('refused'), why: z.string(), file: z.string() }),
  ])
  .openapi('DrawerState', { description: 'refused: its file is not understood, and left as it is' });

export const partsSchema = z
  .strictObject({
    objectives: z.array(listed(objective, 'Objective')),
    relays: z.array(listed(relay, 'Relay')),
    sensors: z.array(listed(sensor, 'Sensor')),
    drawer: drawerState,
  })
  .openapi('Parts');
