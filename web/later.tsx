import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** A part of the page that is fetched when it is wanted. Without it the rest still answers. */
export function Later({ load, what }: { load: () => Promise<ComponentType>; what: string }) {
  const [Part, setPart] = useState<ComponentType | undefined>(undefined);
  const [missing, setMissing] = useState(false);
  useEffect(() => {
    load().then(
      (part) => setPart(() => part),
      () => setMissing(true),
    );
  }, [load]);
  if (missing) return <p class="hint">{what} could not be fetched: load the page again to see it all.</p>;
  return Part ? <Part /> : null;
}
