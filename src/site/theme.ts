import { theme } from './kept.ts';
import { keep } from './storage.ts';

/** The theme after this one: system, light, dark, and round again. */
export const next = (): void => {
  const { dataset } = document.documentElement;
  const now = dataset['theme'];
  const then = now === undefined ? 'light' : now === 'light' ? 'dark' : undefined;
  if (then) dataset['theme'] = then;
  else delete dataset['theme'];
  keep(theme, then);
};
