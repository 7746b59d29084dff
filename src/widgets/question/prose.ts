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

/** The space between a number and a unit. */
const UNIT =
  /(?<=\d) (?=(?:mm|cm|m|s|ms|min|h|K|lx|W|Ws|Wh|J|N|kg|g|px|A|V|ft|in|stops?|EV|mired)(?![\p{L}\d])|%)/gu;

/** A line with its *stars* set. */
export const leaning = (text: string): (string | Element)[] =>
  text
    // Sizes stay on one line, and a number with its unit.
    .replaceAll(/ × (?=\d)/g, '\u00a0×\u00a0')
    .replaceAll(UNIT, '\u00a0')
    .split(/\*([^*]+)\*/)
    .map((piece, i) => (i % 2 === 1 ? make('em', piece) : piece))
    .filter((piece) => piece !== '');
