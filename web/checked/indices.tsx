/** Words in which an index is set low: `n_d` as n with a small d. */
export const Indices = ({ text }: { text: string }) => (
  <>
    {text.split(/(\p{L}_[\p{L}-]+)/u).map((piece, i) => {
      const [name, low] = i % 2 === 1 ? piece.split('_') : [piece];
      return (
        <span key={`${i}${piece}`}>
          {name}
          {low && <sub>{low}</sub>}
        </span>
      );
    })}
  </>
);
