/** So many go on at once, the others a turn of the loop later: the first answer need not wait for a long row. */
const AT_ONCE = 16;

const waiting: (() => void)[] = [];

/**
 * Waits until all that has come in by now has been read; those who wait go on together, in order. What is then worked
 * out for one request after the other finds its code and tables in the processor's nearest memory, where the last one
 * left them. To read a request in between would drive them out, which costs nearly as much again as a report takes.
 */
export function inARow(): Promise<void> {
  return new Promise((goOn) => {
    if (waiting.push(goOn) === 1) setImmediate(nextTurn);
  });
}

function nextTurn(): void {
  for (const goOn of waiting.splice(0, AT_ONCE)) goOn();
  if (waiting.length > 0) setImmediate(nextTurn);
}
