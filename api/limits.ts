import type { Context } from 'hono';
import { Refusal, refusal } from './problems.ts';

/** What a body may be: JSON, or another text, in UTF-8, not too long, not too deep. */

const MOST_BYTES = 256 * 1024;
/** The deepest that a request of the contract goes is 8 levels. */
const MOST_LEVELS = 32;

/** The body as a value. @throws Refusal 400, 413, 415 or 422 */
export async function readJson(c: Context, most = MOST_BYTES): Promise<unknown> {
  requireType(c, ['application/json']);
  const bytes = await readBytes(c, most);
  let text: string;
  try {
    text = utf8(bytes);
  } catch {
    throw refusal(400, 'notJson', 'is not UTF-8 text', `${bytes.length} bytes`, 'JSON in UTF-8');
  }
  if (text === '') throw refusal(400, 'notJson', 'has no body', text, 'JSON');
  // Before it is parsed: nothing that follows may recurse deeper than this.
  const levels = levelsOf(text);
  if (levels > MOST_LEVELS) throw refusal(422, 'tooDeep', 'is nested too deep', `${levels} levels`, `at most ${MOST_LEVELS} levels`);
  try {
    return JSON.parse(text);
  } catch (error) {
    throw refusal(
      400,
      'notJson',
      `is not JSON: ${(error as Error).message.slice(0, 100)}`,
      text,
      'JSON; NaN and Infinity are not numbers there',
    );
  }
}

/** The body as a value where it is JSON, as text where it is a table. @throws Refusal 400, 413, 415 or 422 */
export async function readJsonOrTable(c: Context, most: number): Promise<{ value: unknown } | { table: string }> {
  if (requireType(c, ['application/json', 'text/csv']) === 'application/json') return { value: await readJson(c, most) };
  const bytes = await readBytes(c, most);
  try {
    return { table: utf8(bytes) };
  } catch {
    throw refusal(400, 'notText', 'is not UTF-8 text', `${bytes.length} bytes`, 'a table saved as CSV in UTF-8');
  }
}

const utf8 = (bytes: Uint8Array): string => new TextDecoder('utf-8', { fatal: true }).decode(bytes);

/** The content type, which must be one of these. @throws Refusal 415 */
function requireType(c: Context, types: readonly string[]): string {
  const type = c.req.header('content-type');
  const [first, ...parameters] = (type ?? '').toLowerCase().split(';');
  const media = first?.trim() ?? '';
  const charset = parameters.map((p) => p.trim()).find((p) => p.startsWith('charset='));
  if (!types.includes(media) || (charset !== undefined && !/^charset="?utf-8"?$/.test(charset)))
    throw refusal(415, 'wrongContentType', 'has the wrong content type', type ?? 'no Content-Type', `Content-Type: ${types.join(' or ')}`);
  const coding = c.req.header('content-encoding');
  if (coding !== undefined && coding.toLowerCase() !== 'identity')
    throw refusal(415, 'wrongContentType', 'has a content encoding', coding, 'a body as it stands');
  return media;
}

const tooLarge = (given: string, most: number) =>
  refusal(413, 'tooLarge', 'is too large', given, `at most ${most} bytes`, { connection: 'close' });

/** Reads no further than the limit, whatever length was promised. */
async function readBytes(c: Context, most: number): Promise<Uint8Array> {
  const promised = Number(c.req.header('content-length') ?? 0);
  if (promised > most) throw tooLarge(`${promised} bytes`, most);
  const body = c.req.raw.body;
  if (body === null) return new Uint8Array();
  const chunks: Uint8Array[] = [];
  let length = 0;
  try {
    for await (const chunk of body as AsyncIterable<Uint8Array>) {
      length += chunk.length;
      if (length > most) throw tooLarge(`more than ${most} bytes`, most);
      chunks.push(chunk);
    }
  } catch (error) {
    // Who sends breaks off, and is most likely gone: no fault of ours.
    throw error instanceof Refusal ? error : refusal(400, 'brokenOff', 'breaks off', `${length} bytes`, 'the whole body');
  }
  return Buffer.concat(chunks);
}

/** The deepest nesting of brackets outside strings; of what is not JSON an upper bound. */
function levelsOf(text: string): number {
  let level = 0;
  let deepest = 0;
  let inString = false;
  for (let i = 0; i < text.length; i++) {
    const char = text[i];
    if (inString) {
      if (char === '\\') i++;
      else if (char === '"') inString = false;
    } else if (char === '"') inString = true;
    else if (char === '[' || char === '{') {
      level++;
      if (level > deepest) deepest = level;
    } else if (char === ']' || char === '}') level--;
  }
  return deepest;
}
