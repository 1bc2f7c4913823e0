/** What to mind, a line each; nothing where there is nothing. */
export function Cautions({ lines }: { lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <ul class="cautions">
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}
