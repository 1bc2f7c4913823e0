/** The API's own description, read as what its requests may be and its answers must be. */

export interface Schema {
  $ref?: string;
  type?: string;
  properties?: Record<string, Schema>;
  required?: string[];
  additionalProperties?: boolean | Schema;
  items?: Schema;
  prefixItems?: Schema[];
  minItems?: number;
  maxItems?: number;
  minLength?: number;
  maxLength?: number;
  pattern?: string;
  minimum?: number;
  maximum?: number;
  enum?: unknown[];
  anyOf?: Schema[];
  oneOf?: Schema[];
  allOf?: Schema[];
}

interface Described {
  content?: Record<string, { schema: Schema }>;
}

export interface Operation {
  /** `POST /api/pairings/report` */
  readonly name: string;
  readonly method: string;
  readonly path: string;
  /** What a JSON body must be, where there is one. */
  readonly body: Schema | undefined;
  readonly responses: Readonly<Record<string, Described>>;
}

export interface Description {
  readonly document: object;
  readonly operations: readonly Operation[];
  /** A schema without its references, unions and intersections: all that a value may be. */
  branches(schema: Schema): Schema[];
}

interface Written {
  paths: Record<string, Record<string, { requestBody?: Described; responses: Record<string, Described> }>>;
  components: { schemas: Record<string, Schema> };
}

export function descriptionOf(document: object): Description {
  const { paths, components } = document as Written;
  const operations = Object.entries(paths).flatMap(([path, item]) =>
    Object.entries(item).map(([method, { requestBody, responses }]): Operation => {
      const body = requestBody?.content?.['application/json']?.schema;
      return { name: `${method.toUpperCase()} ${path}`, method: method.toUpperCase(), path, body, responses };
    }),
  );
  const branches = (schema: Schema): Schema[] => {
    if (schema.$ref !== undefined) return branches(components.schemas[schema.$ref.split('/').at(-1) as string] as Schema);
    const several = schema.anyOf ?? schema.oneOf ?? schema.allOf;
    return several ? several.flatMap(branches) : [schema];
  };
  return { document, operations, branches };
}

/** The operation that a method and the path of an address mean, if any. */
export function meantBy(operations: readonly Operation[], method: string, path: string): Operation | undefined {
  const fits = ({ path: route }: Operation): boolean =>
    new RegExp(`^${route.replace(/[.]/g, '\\.').replace(/\{\w+\}/g, '[^/]+')}$`).test(path);
  // A path without a parameter comes before one with.
  return operations
    .filter((one) => one.method === method && fits(one))
    .toSorted((a, b) => Number(a.path.includes('{')) - Number(b.path.includes('{')))[0];
}

/** Whether a pointer's steps lead to something that the schema has a name for. */
export function knows(description: Description, schema: Schema, steps: readonly string[]): boolean {
  const [step, ...rest] = steps;
  if (step === undefined) return true;
  return description.branches(schema).some(({ properties, items, prefixItems }) => {
    const place = /^\d+$/.test(step) ? Number(step) : -1;
    const inner =
      properties && Object.hasOwn(properties, step) ? properties[step] : place >= 0 ? (prefixItems?.[place] ?? items) : undefined;
    return inner !== undefined && knows(description, inner, rest);
  });
}

/** Where a schema of the document leaves its objects open: names that nobody has described could come in. */
export function openObjects({ branches, operations }: Description): string[] {
  const open: string[] = [];
  const seen = new Set<Schema>();
  const visit = (schema: Schema, where: string): void => {
    for (const one of branches(schema)) {
      if (seen.has(one)) continue;
      seen.add(one);
      if (one.type === undefined && one.enum === undefined) open.push(`${where}: anything`);
      if (one.type === 'object' && one.additionalProperties !== false) open.push(where);
      for (const [name, inner] of Object.entries(one.properties ?? {})) visit(inner, `${where}/${name}`);
      if (one.items) visit(one.items, `${where}/0`);
      for (const [i, inner] of (one.prefixItems ?? []).entries()) visit(inner, `${where}/${i}`);
    }
  };
  for (const { name, responses } of operations)
    for (const [status, { content = {} }] of Object.entries(responses))
      for (const [type, { schema }] of Object.entries(content)) if (type.includes('json')) visit(schema, `${name} ${status} `);
  return open;
}
