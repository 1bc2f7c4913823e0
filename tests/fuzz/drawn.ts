import type { Random } from '../support/random.ts';
import type { Description, Schema } from './document.ts';

/** A value that a schema of the document lets in: of numbers the ends often, of lists mostly short ones. */
export function drawn(description: Description, schema: Schema, r: Random, depth = 0): unknown {
  const one = r.oneOf(description.branches(schema));
  if (one.enum) return r.oneOf(one.enum);
  switch (one.type) {
    case 'number':
    case 'integer':
      return numberIn(one, r);
    case 'string':
      return textIn(one, r);
    case 'boolean':
      return r.chance(0.5);
    case 'array': {
      if (one.prefixItems) return one.prefixItems.map((item) => drawn(description, item, r, depth + 1));
      const { minItems = 0, maxItems = 6, items = {} } = one;
      const most = Math.min(maxItems, Math.max(minItems, r.chance(0.95) ? minItems + 2 : 24));
      return Array.from({ length: r.integer(minItems, most) }, () => drawn(description, items, r, depth + 1));
    }
    case 'object': {
      const wanted = Object.entries(one.properties ?? {}).filter(
        ([name]) => one.required?.includes(name) || r.chance(depth > 2 ? 0.2 : 0.3),
      );
      return Object.fromEntries(wanted.map(([name, inner]) => [name, drawn(description, inner, r, depth + 1)]));
    }
    default:
      return r.oneOf([1, 'x', true]);
  }
}

/**
 * The same body with some of its numbers at the ends of what the schema lets in, or wherever else it does.
 * @param share of its numbers that are moved
 */
export function pushed(
  description: Description,
  schema: Schema,
  body: unknown,
  r: Random,
  share = r.oneOf([0.02, 0.05, 0.15, 0.5]),
): unknown {
  const branches = description.branches(schema);
  if (typeof body === 'number') {
    const numeric = branches.find(({ type }) => type === 'number' || type === 'integer');
    return numeric && r.chance(share) ? endOf(numeric, body, r) : body;
  }
  if (Array.isArray(body)) {
    const { items, prefixItems } = branches.find(({ type }) => type === 'array') ?? {};
    return body.map((item, i) => {
      const inner = prefixItems?.[i] ?? items;
      return inner ? pushed(description, inner, item, r, share) : item;
    });
  }
  if (typeof body !== 'object' || body === null) return body;
  return Object.fromEntries(
    Object.entries(body).map(([name, value]) => {
      const inner = branches.find(({ properties }) => properties && Object.hasOwn(properties, name))?.properties?.[name];
      return [name, inner ? pushed(description, inner, value, r, share) : value];
    }),
  );
}

function endOf(schema: Schema, now: number, r: Random): number {
  const { minimum = now, maximum = now, type } = schema;
  const beside = type === 'integer' ? 1 : Number.EPSILON * Math.max(1e-300, Math.abs(maximum));
  return r.oneOf([minimum, maximum, minimum + beside, maximum - beside, numberIn(schema, r), now]);
}

function numberIn({ type, minimum, maximum }: Schema, r: Random): number {
  const [low, high] = [minimum ?? -1000, maximum ?? Math.max(1000, (minimum ?? 0) * 2)];
  const whole = type === 'integer';
  if (r.chance(0.1)) return r.oneOf([low, high]);
  // Evenly by size where the range covers several, so that small numbers come too.
  const x = low > 0 && high / low > 100 && r.chance(0.7) ? Math.exp(r.between(Math.log(low), Math.log(high))) : r.between(low, high);
  const rounded = whole ? Math.round(x) : r.chance(0.5) ? Number(x.toPrecision(3)) : x;
  return Math.min(high, Math.max(low, rounded));
}

const LETTERS = ['a', 'Z', '7', ' ', '-', 'é', 'Ω', '☂', '<b>', '"', "'", '=', '\\', '𝔸', 'm', 'x'];

function textIn({ pattern, minLength = 0, maxLength = 40 }: Schema, r: Random): string {
  // The one pattern of the document is that of an id.
  if (pattern) return `part-${r.integer(1, 30)}`;
  const letters = Array.from({ length: r.integer(minLength, Math.min(maxLength, minLength + 12)) }, () => r.oneOf(LETTERS)).join('');
  return r.chance(0.02) ? 'x'.repeat(maxLength) : letters.slice(0, maxLength).padEnd(minLength, 'x');
}
