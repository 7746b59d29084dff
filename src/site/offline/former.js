// Before the worker's library: when a newer edition comes in, the scripts of the one in use are set aside, since
// windows that stay open in it may still ask for parts of it. The edition after that one replaces them.
addEventListener('install', (event) => {
  const scope = new URL('./', location.href);
  const setAside = async () => {
    const name = `sbn-former-${scope.pathname}`;
    await caches.delete(name);
    const inUse = await caches.open(`sbn-precache-v2-${scope.href}`);
    const former = await caches.open(name);
    for (const request of await inUse.keys()) {
      const part = request.url.includes('/_astro/') ? await inUse.match(request) : undefined;
      if (part) await former.put(request, part);
    }
  };
  if ('waitUntil' in event && typeof event.waitUntil === 'function') event.waitUntil(setAside());
});
