import { signal } from '@preact/signals';
import type { ComponentChildren, ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** Whether the view that is open stands whole: what comes at the foot of the page waits for it, so that nothing that stands is moved. */
export const whole = signal(false);

interface Props {
  load: () => Promise<ComponentType>;
  what: string;
  /** That the view stands whole once this has come. */
  last?: boolean;
  /** What stands below it: it comes after it, so that it is not pushed down. */
  children?: ComponentChildren;
}

/** A part of the page that is fetched when it is wanted. Without it the rest still answers. */
export function Later({ load, what, last = false, children }: Props) {
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
      });
  }, [load, last]);
  if (!missing && !Part) return null;
  return (
    <>
      {Part ? <Part /> : <p class="hint">{what} could not be fetched: load the page again to see it all.</p>}
      {children}
    </>
  );
}
