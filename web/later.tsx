import { signal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** Whether the view that is open stands whole: what comes at the foot of the page waits for it, so that nothing that stands is moved. */
export const whole = signal(false);

interface Props {
  load: () => Promise<ComponentType>;
  what: string;
  /** That the view stands whole once this has come. */
  last?: boolean;
  /** Told when it has come, or could not: what stands below it then comes, so that it is not pushed down. */
  then?: () => void;
}

/** A part of the page that is fetched when it is wanted. Without it the rest still answers. */
export function Later({ load, what, last = false, then }: Props) {
  const [Part, setPart] = useState<ComponentType | undefined>(undefined);
  const [missing, setMissing] = useState(false);
  useEffect(() => {
    load()
      .then(
        (part) => setPart(() => part),
        () => setMissing(true),
      )
      .finally(() => {
        if (last) whole.value = true;
        then?.();
      });
  }, [load, last, then]);
  if (missing) return <p class="hint">{what} could not be fetched: load the page again to see it all.</p>;
  return Part ? <Part /> : null;
}
