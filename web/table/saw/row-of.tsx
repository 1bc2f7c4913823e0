import { Typed } from '../../fields/typed.tsx';
import { complaint } from '../../state/words.ts';
import { HINTS, isGap, type Piece, type Row, sentenceOf } from './rows.ts';
import { changeRow, done, looked, quiet } from './state.ts';

/** One sighting as a sentence with blanks; how it is read stands with the first of its kind. */
export function RowOf({ row, at, first, remove }: { row: Row; at: number; first: boolean; remove: () => void }) {
  const found = quiet.value ? undefined : looked.value.problems.get(at);
  const wrong = found ? `saw-${at}-wrong` : undefined;
  return (
    <li class="saw-row">
      <p class="wish saw-sentence">
        {sentenceOf(row).map((piece, i) => (
          <PieceOf
            key={typeof piece === 'string' ? `${i}` : 'pick' in piece ? piece.pick : piece.key}
            piece={piece}
            row={row}
            at={at}
            wrong={wrong}
          />
        ))}{' '}
        <button type="button" class="lead out" aria-label={`Take sighting ${at + 1} away`} onClick={remove}>
          take away
        </button>
      </p>
      {found && (
        <p class="complaint" id={wrong}>
          {complaint(found)}
        </p>
      )}
      {first && <p class="hint">{HINTS[row.kind]}</p>}
    </li>
  );
}

function PieceOf({ piece, row, at, wrong }: { piece: Piece; row: Row; at: number; wrong: string | undefined }) {
  if (typeof piece === 'string') return <>{piece}</>;
  const type = (key: string, text: string): void => changeRow(at, { ...row, texts: { ...row.texts, [key]: text } });
  if (isGap(piece)) {
    const text = row.texts[piece.key] ?? '';
    return (
      <span class="blank">
        <Typed
          id={`saw-${at}-${piece.key}`}
          label={piece.label}
          value={text}
          wrong={wrong}
          size={Math.max(4, text.length + 1)}
          onType={(typed) => type(piece.key, typed.slice(0, 24))}
          onDone={done}
        />
      </span>
    );
  }
  return (
    <select
      aria-label={piece.label}
      value={row.texts[piece.pick] || (piece.ways[0]?.[0] ?? '')}
      onChange={({ currentTarget }) => {
        type(piece.pick, currentTarget.value);
        done();
      }}
    >
      {piece.ways.map(([value, words]) => (
        <option key={value} value={value}>
          {words}
        </option>
      ))}
    </select>
  );
}
