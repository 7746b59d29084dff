/*
 * Keeps the whole site on the reader's device. When the site is built copy.ts puts it at /sw.js, with the list of files
 * written in, and Workbox's own builds beside it.
 *
 * A first visit is kept at once; a newer edition waits until its reader asks for it, or every window is closed.
 */
/* global importScripts */
importScripts('workbox.js');

/**
 * @typedef {object} Library
 * @property {typeof import('workbox-core')} core
 * @property {typeof import('workbox-precaching')} precaching
 * @property {typeof import('workbox-routing')} routing
 */
/** @type {Library} */
const { core, precaching, routing } = Reflect.get(self, 'workbox');
/** @type {import('workbox-precaching').PrecacheEntry[]} */
const files = Reflect.get(self, 'files');

const LANES = 6;
const scope = new URL('./', location.href);
const FORMER = `sbn-former-${scope.href}`;

core.setCacheNameDetails({ prefix: 'sbn' });
core.clientsClaim();
const copy = new precaching.PrecacheController();
copy.addToCacheList(files);

/** The scripts of the edition in use: windows that stay open in it may still ask for parts of it. */
const setAside = async () => {
  await caches.delete(FORMER);
  const inUse = await caches.open(copy.strategy.cacheName);
  const former = await caches.open(FORMER);
  for (const request of await inUse.keys()) {
    const part = request.url.includes('/_astro/') ? await inUse.match(request) : undefined;
    if (part) await former.put(request, part);
  }
};

/** Workbox fetches one file after another, and a phone would wait for each: several come in side by side first. */
const fetchAhead = async () => {
  const kept = await caches.open(copy.strategy.cacheName);
  const waiting = [...copy.getURLsToCacheKeys()];
  const lane = async () => {
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      const [url, key] = next;
      if (await kept.match(key)) continue;
      const answer = await fetch(url, { cache: key === url ? 'default' : 'reload' });
      if (answer.ok && !answer.redirected) await kept.put(key, answer);
    }
  };
  // What fails here is fetched once more by Workbox, which says what is missing.
  await Promise.all(Array.from({ length: LANES }, () => lane().catch(() => undefined)));
};

addEventListener('install', (event) => {
  const install = /** @type {ExtendableEvent} */ (event);
  install.waitUntil(
    setAside()
      .then(fetchAhead)
      .then(() => copy.install(install)),
  );
});
addEventListener('activate', (event) => {
  void copy.activate(/** @type {ExtendableEvent} */ (event));
});
addEventListener('message', ({ data }) => {
  if (data === 'use it now') core.skipWaiting();
});

// A plate's settings stand in the query and change nothing about the page; hosts add the last slash of an address.
routing.registerRoute(
  new precaching.PrecacheRoute(copy, {
    ignoreURLParametersMatching: [/^/],
    cleanURLs: false,
    urlManipulation: ({ url }) => [new URL(url.pathname.replace(/(\/index\.html|\/)?$/, '/'), url)],
  }),
);
// A page that is newer than the copy, or was never there.
routing.registerRoute(
  ({ request }) => request.mode === 'navigate',
  async ({ request }) => {
    try {
      return await fetch(request);
    } catch {
      return (await copy.matchPrecache('404.html')) ?? Response.error();
    }
  },
);
routing.registerRoute(
  ({ url }) => url.href.startsWith(`${scope.href}_astro/`),
  async ({ request }) => (await (await caches.open(FORMER)).match(request)) ?? fetch(request),
);
