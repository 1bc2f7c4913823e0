import { useRef } from 'preact/hooks';

interface Props {
  /** What the button says, and what the browser's own chooser is called. */
  words: string;
  label: string;
  /** Endings and types that are offered. */
  accept: string;
  onPick(file: File): Promise<unknown>;
}

/** A button that lets one choose a file. */
export function PickFile({ words, label, accept, onPick }: Props) {
  const picker = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" class="lead" onClick={() => picker.current?.click()}>
        {words}
      </button>
      <input
        ref={picker}
        type="file"
        accept={accept}
        hidden
        aria-label={label}
        onChange={({ currentTarget }) => {
          const chosen = currentTarget.files?.[0];
          // Emptied, so that the same file can be chosen again.
          if (chosen) onPick(chosen).finally(() => Object.assign(currentTarget, { value: '' }));
        }}
      />
    </>
  );
}
