/**
 * Works out a formula as core writes it: `×`, `/`, `−`, `+`, `²`, `^`, `√`, `min`, `max`, `ceil`, `floor`, `atan`, `acos`, `sin`,
 * `log2`, `π`, parentheses, numbers with real minus signs, and symbols from a table. A small parser by
 * recursive descent; it shares nothing with core.
 */
type Table = ReadonlyMap<string, number>;

const FUNCTIONS: Record<string, (...xs: number[]) => number> = {
  min: Math.min,
  max: Math.max,
  ceil: Math.ceil,
  floor: Math.floor,
  atan: Math.atan,
  acos: Math.acos,
  sin: Math.sin,
  log2: Math.log2,
};

const TOKEN = /\s*(?:(\d+(?:\.\d+)?(?:e[+−-]?\d+)?)|([\p{L}Δ][\p{L}\d_]*)|([×/+−²^√(),∞]))/uy;

function tokensOf(text: string): string[] {
  const tokens: string[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.trimEnd().length) {
    const at = TOKEN.lastIndex;
    const match = TOKEN.exec(text);
    if (!match) throw new Error(`cannot read '${text.slice(at)}' in '${text}'`);
    tokens.push(match[1] ?? match[2] ?? match[3] ?? '');
  }
  return tokens;
}

export function workOut(text: string, table: Table = new Map()): number {
  const tokens = tokensOf(text);
  let at = 0;
  const peek = (): string | undefined => tokens[at];
  const take = (token: string): boolean => peek() === token && ++at > 0;
  const need = (token: string): void => {
    if (!take(token)) throw new Error(`wants '${token}' instead of '${peek() ?? 'the end'}' in '${text}'`);
  };

  const sum = (): number => {
    let value = product();
    for (;;) {
      if (take('+')) value += product();
      else if (take('−')) value -= product();
      else return value;
    }
  };
  const product = (): number => {
    let value = signed();
    for (;;) {
      if (take('×')) value *= signed();
      else if (take('/')) value /= signed();
      else return value;
    }
  };
  const signed = (): number => (take('−') ? -signed() : power());
  const power = (): number => {
    const value = atom();
    if (take('²')) return value * value;
    return take('^') ? value ** signed() : value;
  };
  const atom = (): number => {
    const token = tokens[at++];
    if (token === undefined) throw new Error(`ends too soon: '${text}'`);
    if (token === '(') return closed(sum());
    if (token === '√') return Math.sqrt(atom());
    if (token === 'π') return Math.PI;
    if (token === '∞') return Number.POSITIVE_INFINITY;
    if (/^\d/.test(token)) return Number(token.replace('−', '-'));
    const call = FUNCTIONS[token];
    if (call && take('(')) {
      const values = [sum()];
      while (take(',')) values.push(sum());
      return closed(call(...values));
    }
    const value = table.get(token);
    if (value === undefined) throw new Error(`'${token}' means nothing in '${text}'`);
    return value;
  };
  const closed = (value: number): number => {
    need(')');
    return value;
  };

  const value = sum();
  if (at < tokens.length) throw new Error(`'${tokens.slice(at).join(' ')}' is left over in '${text}'`);
  return value;
}
