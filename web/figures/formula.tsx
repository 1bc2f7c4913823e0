/** A formula with its indices set low: `f_R = 1000 / P` as f with a small R. */
export function Formula({ text }: { text: string }) {
  const pieces = text.split(/([\p{L}]+(?:_[\p{L}\d]+)?)/u);
  return (
    <>
      {pieces.map((piece, i) => {
        // Pieces at odd places are names; functions stay upright.
        const [name = '', low] = piece.split('_');
        const key = `${i}${piece}`;
        if (i % 2 === 0 || UPRIGHT.has(piece)) return <span key={key}>{piece}</span>;
        return (
          <var key={key}>
            {name}
            {low && <sub>{low}</sub>}
          </var>
        );
      })}
    </>
  );
}

const UPRIGHT: ReadonlySet<string> = new Set(['min', 'max', 'atan', 'log', 'acos', 'sin', 'cos', 'sqrt', 'without', 'limit']);
