import Ajv2020, { type ValidateFunction } from 'ajv/dist/2020.js';
import { steps, valueAt } from '../../core/index.ts';
import { firstUnfit } from '../data/finite.ts';
import type { Got, Sent } from './client.ts';
import { type Description, knows, meantBy, type Operation } from './document.ts';

/** Holds an answer to the API's own description, and to what every answer of it promises. */

/** May come where no operation is meant, or before it is known which. */
const BEFORE: readonly number[] = [400, 401, 403, 404, 405];
const LINES = 'application/x-ndjson';

interface ProblemTold {
  status: number;
  detail: string;
  errors: { path: string; code: string; message: string; given: string; expected: string }[];
}

/** As the server reads it; what cannot be decoded stays as it is. */
function decoded(path: string): string {
  try {
    return decodeURI(path);
  } catch {
    return path;
  }
}

export function judgeOf(description: Description): (sent: Sent, got: Got) => string[] {
  const ajv = new Ajv2020({ strict: false, validateFormats: false });
  ajv.addSchema(description.document, 'api');
  const known = new Map<string, ValidateFunction>();
  const validator = (where: string): ValidateFunction => {
    const one = known.get(where) ?? ajv.compile({ $ref: `api#${where}` });
    known.set(where, one);
    return one;
  };
  const fits = (where: string, value: unknown): string[] => {
    const validate = validator(where);
    return validate(value) ? [] : [`is not as described: ${ajv.errorsText(validate.errors).slice(0, 300)}`];
  };
  const at = (...names: string[]): string =>
    names.map((name) => `/${encodeURIComponent(name.replaceAll('~', '~0').replaceAll('/', '~1'))}`).join('');

  return ({ method, path, headers, body }, { status, headers: got, text }) => {
    if (status === 500) return ['a fault of our own'];
    if (method === 'HEAD' || status === 204) return text === '' ? [] : ['has a body that it must not have'];
    const address = decoded(path.split(/[?#]/)[0] ?? '');
    const operation = meantBy(description.operations, method, address);
    const type = String(got['content-type'] ?? '').split(';')[0] as string;
    if (status >= 400) {
      if (type !== 'application/problem+json') return [`refuses as ${type || 'nothing'}`];
      const problem = JSON.parse(text) as ProblemTold;
      const where = operation?.responses[String(status)]
        ? at('paths', operation.path, method.toLowerCase(), 'responses', String(status), 'content', type, 'schema')
        : at('components', 'schemas', 'Problem');
      const expected =
        operation?.responses[String(status)] ||
        (!operation && BEFORE.includes(status)) ||
        problem.errors.every(({ code }) => code === 'notHttp');
      return [
        ...(expected ? [] : [`answers ${status}, which is not described`]),
        ...fits(where, problem),
        ...wrongProblem(problem, status, operation, body),
      ];
    }
    if (!operation) return address.startsWith('/api') ? [`answers ${status} where nothing is described`] : [];
    const described = operation.responses[String(status)]?.content;
    if (!described?.[type]) return [`answers ${status} as ${type}, which is not described`];
    if (type === 'text/csv') return [];
    const lines = type === LINES ? text.trim().split('\n') : [text];
    const value: unknown = JSON.parse(lines.at(-1) ?? '');
    const unfit = firstUnfit(value);
    const where = at('paths', operation.path, method.toLowerCase(), 'responses', String(status), 'content', 'application/json', 'schema');
    const versioned = headers.etag === undefined && (status === 201 || method === 'PUT') && !/^"\d+"$/.test(String(got.etag));
    return [...(unfit ? [`holds what JSON cannot: ${unfit}`] : []), ...fits(where, value), ...(versioned ? ['tells no version'] : [])];
  };

  /** Each error whole, and naming something that was sent, or that is missing there. */
  function wrongProblem(
    { status: told, detail, errors }: ProblemTold,
    status: number,
    operation: Operation | undefined,
    body: Buffer | undefined,
  ): string[] {
    const faults: string[] = [];
    if (told !== status) faults.push(`is ${status} and says ${told}`);
    if (errors.length === 0 || errors.length > 20) faults.push(`names ${errors.length} errors`);
    if (detail === '') faults.push('says nothing');
    for (const error of errors) {
      for (const [name, text] of Object.entries(error))
        if (text === '' && name !== 'path') faults.push(`has an error without ${name}: ${JSON.stringify(error)}`);
      if (error.given.length > 80) faults.push(`shows ${error.given.length} characters of what was given`);
      if (status === 422 && /undefined|\[object|NaN/.test(error.message + error.expected))
        faults.push(`speaks nonsense: ${JSON.stringify(error)}`);
      if (status === 422 && !leads(error.path, operation, body)) faults.push(`blames ${error.path}, which leads nowhere: ${error.message}`);
    }
    return faults;
  }

  function leads(path: string, operation: Operation | undefined, body: Buffer | undefined): boolean {
    if (path === '') return true;
    if (!path.startsWith('/') || !operation?.body || body === undefined) return false;
    const there = steps(path);
    try {
      if (valueAt(JSON.parse(body.toString()), there) !== undefined) return true;
    } catch {}
    // What is missing, or stands in a part that is named by its id, the description knows.
    return knows(description, operation.body, there);
  }
}
