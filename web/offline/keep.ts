/**
 * Has the browser keep the page for when the server is not there, once the first answer stands and nothing
 * else is to be fetched. Only the build makes the worker: where there is none, nothing is kept.
 */
export function keepAtHand(): void {
  if (!isSecureContext || !('serviceWorker' in navigator)) return;
  // A browser may refuse, in a private window for one: the page works without.
  const keep = (): void => void navigator.serviceWorker.register('/sw.js').catch(() => {});
  addEventListener('load', () => setTimeout(keep, 2000));
}
