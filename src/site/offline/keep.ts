/**
 * Has the browser keep the whole site, once the page is there and idle. What tells of a newer edition is fetched
 * when there is one. The worker is made by copy.ts when the site is built.
 */
const start = async (): Promise<void> => {
  const { serviceWorker: workers } = navigator;
  const registration = await workers.register(`${import.meta.env.BASE_URL}sw.js`);
  const look = (): void => {
    if (registration.active && (registration.installing ?? registration.waiting))
      void import('./edition.ts').then((part) => part.follow(registration));
  };
  registration.onupdatefound = look;
  look();
  await workers.ready;
  document.documentElement.dataset['kept'] = '';
};

// While the site is being written, pages must come from the disk, not from a copy.
if (import.meta.env.PROD && 'serviceWorker' in navigator) {
  addEventListener('load', () => {
    const begin = (): void => void start().catch(() => undefined);
    if ('requestIdleCallback' in window) requestIdleCallback(begin);
    else setTimeout(begin, 1000);
  });
}
