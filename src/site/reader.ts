/**
 * What every page does for its reader, and no more: the theme is fetched once its switch is pressed, the ticks
 * once one is set or some are kept.
 */
import './offline/keep.ts';

const root = document.documentElement;
const ticks = () => import('./ticks.ts');
const show = (): void => void ticks().then((part) => part.show());

document.addEventListener('click', ({ target }) => {
  const button = (target as Element).closest<HTMLElement>(
    '[data-theme-switch],[data-progress-tick]',
  );
  const lesson = button?.dataset['progressTick'];
  if (lesson) void ticks().then((part) => part.turn(lesson));
  else if (button) void import('./theme.ts').then((part) => part.next());
});

try {
  // The key of `progress` in kept.ts, which is itself left for those who have something there.
  if (localStorage.getItem('sbn:progress:v1')) show();
} catch {
  // Storage refused: nothing is kept.
}
// Ticked in another window, read from a file, or erased.
addEventListener('storage', show);

// A note shown under the pointer goes away with Escape, and comes back for the next word.
document.addEventListener('keydown', ({ key }) => {
  if (key === 'Escape') root.dataset['quiet'] = '';
});
document.addEventListener('pointerout', ({ target }) => {
  if ((target as Element).matches('.term')) delete root.dataset['quiet'];
});
