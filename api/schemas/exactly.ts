import type { z } from '@hono/zod-openapi';

/** Every field there, optional ones too, so that each side must have what the other has. */
type Whole<T> = T extends readonly (infer E)[] ? Whole<E>[] : T extends object ? { [K in keyof T]-?: Whole<Exclude<T[K], undefined>> } : T;

type Agrees<A, B> = [Whole<A>] extends [Whole<B>] ? ([Whole<B>] extends [Whole<A>] ? unknown : never) : never;

/** Holds a schema to a type of core's to the last optional field: one more or one less does not compile. */
export const exactly =
  <T>() =>
  <S extends z.ZodType>(schema: S & Agrees<z.infer<S>, T>): S =>
    schema;
