import type { ComponentChildren } from 'preact';

/** A table in a box that scrolls: reached by keyboard, and named. */
export function Scroll({ title, tall, children }: { title: string; tall?: boolean; children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section class={tall ? 'scroll tall' : 'scroll'} tabIndex={0} aria-label={title}>
      {children}
    </section>
  );
}
