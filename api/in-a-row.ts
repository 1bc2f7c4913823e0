let turn: Promise<void> | undefined;

/**
 * Waits until all that has come in by now has been read; all who wait go on together. What is then worked out for one
 * request after the other finds its code and tables where the last one left them, in the processor's nearest memory: reading
 * a request in between would drive them out, which costs a report nearly as much again as it takes.
 */
export function inARow(): Promise<void> {
  turn ??= new Promise((resolve) => {
    setImmediate(() => {
      turn = undefined;
      resolve();
    });
  });
  return turn;
}
