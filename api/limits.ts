import type { Context } from 'hono';
import { refusal } from './problems.ts';

/** What a body may be: JSON in UTF-8, not too long, not too deep. */

const MOST_BYTES = 256 * 1024;
/** The deepest that a request of the contract goes is 8 levels. */
const MOST_LEVELS = 32;

/** The body as a value. @throws Refusal 400, 413, 415 or 422 */
export async function readJson(c: Context): Promise<unknown> {
  requireJson(c);
  const bytes = await readBytes(c);
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
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

function requireJson(c: Context): void {
  const type = c.req.header('content-type');
  const [media, ...parameters] = (type ?? '').toLowerCase().split(';');
  const charset = parameters.map((p) => p.trim()).find((p) => p.startsWith('charset='));
  if (media?.trim() !== 'application/json' || (charset !== undefined && !/^charset="?utf-8"?$/.test(charset)))
    throw refusal(415, 'wrongContentType', 'has the wrong content type', type ?? 'no Content-Type', 'Content-Type: application/json');
  const coding = c.req.header('content-encoding');
  if (coding !== undefined && coding.toLowerCase() !== 'identity')
    throw refusal(415, 'wrongContentType', 'has a content encoding', coding, 'a body as it stands');
}

const tooLarge = (given: string) => refusal(413, 'tooLarge', 'is too large', given, `at most ${MOST_BYTES} bytes`, { connection: 'close' });

/** Reads no further than the limit, whatever length was promised. */
async function readBytes(c: Context): Promise<Uint8Array> {
  const promised = Number(c.req.header('content-length') ?? 0);
  if (promised > MOST_BYTES) throw tooLarge(`${promised} bytes`);
  const body = c.req.raw.body;
  if (body === null) return new Uint8Array();
  const chunks: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of body as AsyncIterable<Uint8Array>) {
    length += chunk.length;
    if (length > MOST_BYTES) throw tooLarge(`more than ${MOST_BYTES} bytes`);
    chunks.push(chunk);
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
