/** The option that an arrow key goes to, round at both ends; from none (-1) to the first or the last. */
export const stepTo = (active: number, by: 1 | -1, count: number): number => {
  const last = count - 1;
  if (active < 0) return by > 0 ? 0 : last;
  const next = active + by;
  return next < 0 ? last : next > last ? 0 : next;
};
