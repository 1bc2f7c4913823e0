import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** A part of the page that is fetched once the rest stands. Without it the rest still answers. */
export function Later({ load }: { load: () => Promise<ComponentType> }) {
  const [Part, setPart] = useState<ComponentType | undefined>(undefined);
  const [missing, setMissing] = useState(false);
  useEffect(() => {
    load().then(
      (part) => setPart(() => part),
      () => setMissing(true),
    );
  }, [load]);
  if (missing) return <p class="hint">The curves could not be fetched: load the page again for them.</p>;
  return Part ? <Part /> : null;
}
