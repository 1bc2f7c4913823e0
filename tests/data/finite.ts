/** The path of the first NaN, Infinity, null or undefined in a value that is to become JSON, or undefined. */
export function firstUnfit(value: unknown, path = ''): string | undefined {
  if (value === null || value === undefined) return `${path || '/'} is ${value}`;
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : `${path || '/'} is ${value}`;
  if (typeof value !== 'object') return undefined;
  for (const [key, inner] of Object.entries(value)) {
    const found = firstUnfit(inner, `${path}/${key}`);
    if (found) return found;
  }
  return undefined;
}
