import { parseSync } from 'vite';

/** Where a source file can be wrong, and how: each mutant is one piece of the text and what stands in its place. */

export interface Mutant {
  readonly start: number;
  readonly end: number;
  readonly line: number;
  readonly was: string;
  readonly becomes: string;
}

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  // biome-ignore lint/suspicious/noExplicitAny: a syntax tree's nodes have fields of their own by type
  readonly [field: string]: any;
}

const SWAPPED: Readonly<Record<string, readonly string[]>> = {
  '+': ['-'],
  '-': ['+'],
  '*': ['/'],
  '/': ['*'],
  '**': ['*'],
  '%': ['*'],
  '<': ['<=', '>='],
  '<=': ['<', '>'],
  '>': ['>=', '<='],
  '>=': ['>', '<'],
  '===': ['!=='],
  '!==': ['==='],
  '+=': ['-='],
  '-=': ['+='],
  '*=': ['/='],
  '/=': ['*='],
};
const SWAPPED_CALLS: Readonly<Record<string, string>> = {
  'Math.min': 'Math.max',
  'Math.max': 'Math.min',
  'Math.floor': 'Math.ceil',
  'Math.ceil': 'Math.floor',
  'Math.round': 'Math.floor',
  'Math.sin': 'Math.cos',
  'Math.cos': 'Math.sin',
  'Math.asin': 'Math.acos',
  'Math.acos': 'Math.asin',
};
/** Functions whose argument alone may stand in their place. */
const PASSED_ON = new Set(['Math.abs', 'Math.sqrt', 'Math.trunc', 'Math.sign']);
const SWAPPED_METHODS = new Map([
  ['some', 'every'],
  ['every', 'some'],
]);
/** Methods whose object alone may stand in their place. */
const LEFT_OUT = new Set(['filter', 'sort', 'toSorted', 'reverse', 'toReversed']);
/** Statements that may be left out. */
const LEFT_UNDONE = new Set(['CallExpression', 'AssignmentExpression']);
/** What is kept of types: expressions that only carry one. */
const TYPES = /^TS(?!AsExpression|NonNullExpression|SatisfiesExpression|InstantiationExpression)/;
/** What is read by people only: words are held by other tests, and may be put otherwise without being wrong. */
const FOR_READERS = new Set(['words', 'source', 'as', 'why', 'message', 'expected']);
const NOT_WALKED = new Set(['type', 'typeAnnotation', 'typeParameters', 'typeArguments', 'returnType', 'update']);

/**
 * The mutants of a file, in the order of its text: operators and comparisons turned and moved by their border,
 * conditions held to either side, numbers moved by 1 % or by one, signs, defaults, calls and statements left out.
 * Texts and types are left alone, and a loop's own step, without which it would only run for ever.
 */
export function mutantsOf(name: string, text: string): readonly Mutant[] {
  const { program, errors } = parseSync(name, text);
  if (errors.length > 0) throw new Error(`${name}: ${errors[0]?.message}`);
  const mutants: Mutant[] = [];
  const piece = ({ start, end }: Node): string => text.slice(start, end);
  const add = (node: Node, ...all: readonly string[]): void => {
    const line = text.slice(0, node.start).split('\n').length;
    for (const becomes of all) mutants.push({ start: node.start, end: node.end, line, was: piece(node), becomes });
  };
  const turned = (node: Node): string[] =>
    (SWAPPED[node.operator] ?? []).map((operator) => `${piece(node.left)} ${operator} ${piece(node.right)}`);

  const visit = (node: Node): void => {
    if (TYPES.test(node.type) || (node.type === 'Property' && FOR_READERS.has(node.key?.name))) return;
    if (node.type === 'BinaryExpression' && !(node.operator === '+' && (isText(node.left) || isText(node.right))))
      add(node, ...turned(node));
    else if (node.type === 'AssignmentExpression') add(node, ...turned(node));
    else if (node.type === 'LogicalExpression')
      add(
        node,
        ...(node.operator === '??'
          ? [piece(node.right)]
          : [`${piece(node.left)} ${node.operator === '&&' ? '||' : '&&'} ${piece(node.right)}`, piece(node.left), piece(node.right)]),
      );
    else if (node.type === 'UnaryExpression' && (node.operator === '-' || node.operator === '!')) add(node, piece(node.argument));
    else if (node.type === 'ConditionalExpression') add(node, piece(node.consequent), piece(node.alternate));
    else if (node.type === 'IfStatement') add(node.test, 'true', 'false');
    else if (node.type === 'Literal' && typeof node.value === 'number') add(node, ...others(node.value));
    else if (node.type === 'Literal' && typeof node.value === 'boolean') add(node, String(!node.value));
    // `super()` stays a statement of its own: fields that a constructor's parameters set are set after it.
    else if (node.type === 'ExpressionStatement' && node.expression.callee?.type !== 'Super' && LEFT_UNDONE.has(node.expression.type))
      add(node.expression, 'undefined');
    else if (node.type === 'CallExpression') add(node, ...otherCalls(node));
    for (const [field, child] of Object.entries(node)) {
      if (NOT_WALKED.has(field) || (field === 'key' && !node.computed)) continue;
      if (field === 'source' && node.type.endsWith('Declaration')) continue;
      if (node.type === 'ImportDeclaration') continue;
      for (const one of Array.isArray(child) ? child : [child]) if (typeof one?.type === 'string') visit(one);
    }
  };

  const otherCalls = (node: Node): string[] => {
    const { callee } = node;
    if (callee.type !== 'MemberExpression' || callee.computed || callee.optional) return [];
    const called = piece(callee);
    const method: string = callee.property.name;
    const given = text.slice(callee.end, node.end);
    if (SWAPPED_CALLS[called]) return [`${SWAPPED_CALLS[called]}${given}`];
    if (PASSED_ON.has(called)) return [piece(node.arguments[0])];
    if (SWAPPED_METHODS.has(method)) return [`${piece(callee.object)}.${SWAPPED_METHODS.get(method)}${given}`];
    return LEFT_OUT.has(method) ? [piece(callee.object)] : [];
  };

  visit(program as unknown as Node);
  return mutants.sort((a, b) => a.start - b.start || b.end - a.end);
}

const isText = (node: Node): boolean =>
  node.type === 'TemplateLiteral' ||
  (node.type === 'Literal' && typeof node.value === 'string') ||
  (node.type === 'BinaryExpression' && node.operator === '+' && (isText(node.left) || isText(node.right)));

/** Less than this is a slack: a little more or less of it is no mistake. */
const SLACK = 1e-3;

/** Another number: by one or by 1 %. */
const others = (x: number): string[] => {
  if (Number.isInteger(x)) return [String(Math.max(x + 1, Math.round(x * 1.01)))];
  return Math.abs(x) < SLACK ? [] : [String(Number((x * 1.01).toPrecision(12)))];
};

/** What the text asks before each site: is this mutant on? */
const SWITCH = '__mutantOn';

/** A module's text that tells when its own statements begin and end, to the object that has the switches. */
export const observed = (file: string, text: string): string =>
  `globalThis.__mutants.loading(); ${text}\n;globalThis.__mutants.loaded(${JSON.stringify(file)});\n`;

/**
 * The text with every mutant in it, each behind a switch. Nested ones stand only in the text as it was, since one
 * is on at a time. Lines stay where they are.
 *
 * @param first id of the first mutant
 */
export function switched(text: string, mutants: readonly Mutant[], first: number): string {
  interface Site {
    readonly start: number;
    readonly end: number;
    readonly all: [id: number, becomes: string][];
    readonly inner: Site[];
  }
  const roots: Site[] = [];
  const open: Site[] = [];
  mutants.forEach(({ start, end, becomes }, i) => {
    while (open.length > 0 && (open.at(-1) as Site).end <= start) open.pop();
    const around = open.at(-1);
    if (around?.start === start && around.end === end) {
      around.all.push([first + i, becomes]);
      return;
    }
    const site: Site = { start, end, all: [[first + i, becomes]], inner: [] };
    (around?.inner ?? roots).push(site);
    open.push(site);
  });
  const written = (from: number, to: number, inner: readonly Site[]): string => {
    let out = '';
    let at = from;
    for (const site of inner) {
      const whether = site.all.map(([id, becomes]) => `${SWITCH}(${id}) ? (${becomes}) : `).join('');
      out += `${text.slice(at, site.start)}(${whether}(${written(site.start, site.end, site.inner)}))`;
      at = site.end;
    }
    return out + text.slice(at, to);
  };
  return `const ${SWITCH} = globalThis.${SWITCH}; ${written(0, text.length, roots)}`;
}
