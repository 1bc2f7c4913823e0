import { createRoute } from '@hono/zod-openapi';
import { type ClassFamily, familyTold, making } from '../../core/glassworks.ts';
import { problemsOf } from '../../core/index.ts';
import { Refusal } from '../problems.ts';
import { BODY_REFUSALS } from '../schemas/problem.ts';
import { classRequest, familySchema } from '../schemas/relay-class.ts';
import { unhurried } from '../unhurried.ts';
import { body, json } from './described.ts';

/** Lenses of a class: what a relay of unknown make may be like. */

export const classRoute = createRoute({
  method: 'post',
  path: '/api/relays/class',
  summary: 'lenses of a class, made for a focal length and a diameter',
  request: body(classRequest),
  responses: { 200: json(familySchema, "each as a relay's glass can list it, with what is left of its faults"), ...BODY_REFUSALS },
});

/** @throws Refusal 422 */
export async function classFamily(given: unknown): Promise<ClassFamily> {
  const asked = classRequest.safeParse(given);
  if (!asked.success) throw new Refusal(422, problemsOf(asked.error, given));
  const { class: kind, focalLengthMm, clearApertureMm } = asked.data;
  return familyTold(await unhurried(making(kind, focalLengthMm, clearApertureMm)));
}
