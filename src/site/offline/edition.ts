/**
 * A newer edition: said in the line at the foot of the page, and used only once its reader presses. Other windows stay
 * in the edition they are in, and say so.
 */
const { serviceWorker: workers } = navigator;
let pressed = false;
let following = false;

const say = (sentence: string, ...ways: readonly (readonly [string, () => void])[]): void => {
  const line = document.querySelector('[data-edition]');
  const words = document.createElement('span');
  words.textContent = sentence;
  const buttons = ways.map(([name, act]) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'tool';
    button.textContent = name;
    button.addEventListener('click', act);
    return button;
  });
  line?.replaceChildren(words, ...buttons);
};
const quiet = (): void => document.querySelector('[data-edition]')?.replaceChildren();
const anew = (): void => {
  location.reload();
};

/** Tells of what is waiting or coming in; called again for each. */
export const follow = (registration: ServiceWorkerRegistration): void => {
  if (!following) {
    following = true;
    workers.addEventListener('controllerchange', () => {
      if (pressed) anew();
      else
        say(
          'This page is of an older edition: read it anew when you are ready.',
          ['Read it anew', anew],
          ['Later', quiet],
        );
    });
  }
  const use = (): void => {
    const ask = (): void => {
      if (registration.waiting) registration.waiting.postMessage('use it now');
      else anew();
    };
    pressed = true;
    say('Changing over …');
    ask();
    // Chromium lets the first asking lie where the worker in use was at something just then.
    setInterval(ask, 1000);
  };
  const worker = registration.installing ?? registration.waiting;
  const ready = (): void => {
    if (worker?.state === 'installed')
      say('A newer edition is ready.', ['Use it now', use], ['Later', quiet]);
  };
  worker?.addEventListener('statechange', ready);
  ready();
};
