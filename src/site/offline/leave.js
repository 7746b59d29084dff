// Given out in the worker's place while the site is being written: a copy kept by `npm start` at the same address would
// otherwise hide every change. It takes itself away and has the windows read anew.

/**
 * @typedef {object} Leaving
 * @property {ServiceWorkerRegistration} registration
 * @property {{ matchAll(): Promise<{ url: string, navigate(url: string): void }[]> }} clients
 * @property {() => Promise<void>} skipWaiting
 */
const worker = /** @type {Leaving} */ (/** @type {unknown} */ (self));

addEventListener('install', () => {
  void worker.skipWaiting();
});
addEventListener('activate', () => {
  void worker.registration
    .unregister()
    .then(() => worker.clients.matchAll())
    .then((windows) => {
      for (const window of windows) window.navigate(window.url);
    });
});
