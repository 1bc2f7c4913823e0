import type { OpenAPIHono, RouteConfig } from '@hono/zod-openapi';

/**
 * Writes a route with a body into the API's description and hands it back without it: the handler
 * reads the body itself (`readJson`, `readPairing`), so that each problem names its field.
 */
export function described<R extends RouteConfig>(app: OpenAPIHono, route: R): R {
  app.openAPIRegistry.registerPath(route);
  const { request: _, ...rest } = route;
  return { ...rest, hide: true } as unknown as R;
}

export const json = <S>(schema: S, description: string) => ({ description, content: { 'application/json': { schema } } });
export const body = <S>(schema: S) => ({ body: { required: true, content: { 'application/json': { schema } } } });
