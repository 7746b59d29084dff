// Given out in the worker's place while the site is being written: a copy kept by `npm start` at the same address would
// otherwise hide every change. It takes itself away and has the windows read anew.

/**
 * @typedef {object} Leaving
 * @property {ServiceWorkerRegistration} registration
 * @property {{ matchAll(): Promise<{ url: string, navigate(url: string): void }[]> }} clients
 * @property {() => Promise<void>} skipWaiting
 */
const worker = /** @type {Leaving} */ (/** @type {unknown} */ (self));

const takeOver = () => void worker.skipWaiting();
// Chromium lets the first asking lie where the worker in use was at something just then.
addEventListener('install', () => {
  takeOver();
  setInterval(takeOver, 1000);
});
addEventListener('activate', () => {
  void worker.registration
    .unregister()
    .then(() => worker.clients.matchAll())
    .then((windows) => {
      for (const window of windows) window.navigate(window.url);
    });
});
