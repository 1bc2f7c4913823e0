/**
 * What keeps the page at hand without the server: the page's own files as they were built together, and
 * the last copy of the lists that it asks for. The build writes VERSION and FILES before this text. A new
 * version waits until no page of the old one is open, so that a page always finds the pieces it was built with.
 */
const OURS = 'pupilwalk ';
const PAGE = OURS + VERSION;
const LISTS = `${OURS}lists`;
const LISTED = ['/api/parts', '/api/glasses'];

addEventListener('install', (event) => {
  event.waitUntil(
    Promise.all([
      // Past the browser's own cache: the document could be of another version there.
      caches.open(PAGE).then((cache) => cache.addAll(FILES.map((file) => new Request(file, { cache: 'no-cache' })))),
      // The first page asked for its lists before there was a worker; without them it still works.
      ...LISTED.map((list) => latest(new Request(list)).catch(() => undefined)),
    ]),
  );
});

addEventListener('activate', (event) => {
  const old = (name) => name.startsWith(OURS) && name !== PAGE && name !== LISTS;
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter(old).map((name) => caches.delete(name))))
      .then(() => clients.claim()),
  );
});

addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== location.origin) return;
  if (LISTED.includes(pathname)) event.respondWith(latest(request));
  else if (FILES.includes(pathname)) event.respondWith(kept(pathname, request));
});

/** A file of the page as it was built; the page's address may carry a view. */
const kept = async (file, request) => (await (await caches.open(PAGE)).match(file, { ignoreVary: true })) ?? fetch(request);

/** From the server, and where it does not answer the last copy that came from it, marked as one. All else under /api is left alone. */
async function latest(request) {
  const lists = await caches.open(LISTS);
  try {
    const answer = await fetch(request);
    if (answer.ok) await lists.put(request, answer.clone());
    return answer;
  } catch (error) {
    const copy = await lists.match(request, { ignoreVary: true });
    if (!copy) throw error;
    const headers = new Headers(copy.headers);
    headers.set('pupilwalk-copy', 'last seen');
    return new Response(copy.body, { headers });
  }
}
