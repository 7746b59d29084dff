/** Says on the page about it how much of the site this browser has kept, and follows as more comes in. */
import type { Edition } from './copy.ts';

const { BASE_URL: base } = import.meta.env;
const one = (selector: string): HTMLElement | null => document.querySelector<HTMLElement>(selector);
const say = (selector: string, sentence: string): void => {
  const place = one(selector);
  if (place && place.textContent !== sentence) place.textContent = sentence;
};
const state = (sentence: string): void => {
  say('[data-offline-state]', sentence);
};
const answer = (sentence: string): void => {
  say('[data-offline-said]', sentence);
};

const CANNOT =
  'This browser does not keep sites, or not at this address: it needs one that begins with https.';

const there = async ({ scope }: ServiceWorkerRegistration): Promise<number> => {
  const copy = await caches.open(`sbn-precache-v2-${scope}`);
  return (await copy.keys()).length;
};
const edition = async (): Promise<Edition> =>
  (await fetch(`${base}edition.json`)).json() as Promise<Edition>;

/** Comes back as long as something is under way, and for a while where nothing is. */
const show = async (patience = 40): Promise<void> => {
  const registration = await navigator.serviceWorker.getRegistration(base);
  const { files, bytes, edition: name } = await edition();
  if (registration?.active) {
    const size = (bytes / 1e6).toFixed(1);
    state(`Yes: ${String(files)} files, ${size} MB, edition ${name}.`);
    return;
  }
  if (registration?.installing) {
    state(`Being fetched: ${String(await there(registration))} of ${String(files)} files.`);
  }
  if (patience === 0) failed();
  else
    setTimeout(
      () => void show(registration?.installing ? patience : patience - 1).catch(failed),
      500,
    );
};
const failed = (): void => {
  state(
    'Not yet: this browser let nothing be kept, or the signal went. Read this page anew to try again.',
  );
};

if ('serviceWorker' in navigator) void show().catch(failed);
else state(CANNOT);

one('[data-offline-look]')?.addEventListener('click', () => {
  answer('Looking …');
  navigator.serviceWorker
    .getRegistration(base)
    .then((registration) => registration?.update())
    .then((registration) => {
      answer(
        registration?.installing || registration?.waiting
          ? 'There is one: it is being fetched, and the foot of the page will say when it is ready.'
          : 'This is the newest.',
      );
    })
    .catch(() => {
      answer('There was no answer: perhaps there is no signal here.');
    });
});

one('[data-offline-lasting]')?.addEventListener('click', () => {
  navigator.storage
    .persist()
    .then((granted) => {
      answer(
        granted
          ? 'The browser will not clear it to make room.'
          : 'The browser made no promise: it may clear the copy if the device is full or you stay away for long.',
      );
    })
    .catch(() => {
      answer('This browser cannot be asked.');
    });
});
