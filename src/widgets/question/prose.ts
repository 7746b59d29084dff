import { make } from '../parts/dom.ts';

/** Paragraphs of an exercise’s text: blank lines part them, *stars* lean on a word. Nothing else is markup. */
export const paragraphs = (text: string): HTMLElement[] =>
  text
    .trim()
    .split(/\n\s*\n/)
    .map((paragraph) => {
      const p = make('p', '') as HTMLElement;
      p.append(...leaning(paragraph.replaceAll(/\s*\n\s*/g, ' ')));
      return p;
    });

/** A line with its *stars* set. */
export const leaning = (text: string): (string | Element)[] =>
  text
    // Sizes stay on one line.
    .replaceAll(/ × (?=\d)/g, '\u00a0×\u00a0')
    .split(/\*([^*]+)\*/)
    .map((piece, i) => (i % 2 === 1 ? make('em', piece) : piece))
    .filter((piece) => piece !== '');
