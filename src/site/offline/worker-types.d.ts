/** What a service worker has that a page has not, as far as ours uses it. */
declare function importScripts(...addresses: string[]): void;

interface ExtendableEvent extends Event {
  waitUntil(done: Promise<unknown>): void;
}
