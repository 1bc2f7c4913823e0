import { signal } from '@preact/signals';

/** The handle that is being moved, by its name; undefined while none is. The address waits for its end. */
export const held = signal<string | undefined>(undefined);

/** Whether a pointer holds it: the paper keeps still under a hand, and need not under keys. */
export const byHand = signal(false);
