/**
 * What a request costs the process that answers it, in ms of its processor: waiting costs nothing, and what other
 * programs do meanwhile does not count.
 */
export interface Work {
  /** All of it. */
  all: number;
  /** The longest in which nothing else was answered. */
  stretch: number;
}

const spent = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

export async function measured<T>(act: () => Promise<T>): Promise<{ result: T; work: Work }> {
  const began = spent();
  let [last, stretch] = [began, 0];
  // Looks whenever the loop lets it, once a millisecond: what is spent from one look to the next is one stretch.
  const look = (): void => {
    const now = spent();
    stretch = Math.max(stretch, now - last);
    last = now;
  };
  const timer = setInterval(look, 1);
  try {
    const result = await act();
    look();
    return { result, work: { all: last - began, stretch } };
  } finally {
    clearInterval(timer);
  }
}
