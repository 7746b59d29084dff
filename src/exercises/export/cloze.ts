import { shortest } from '../../formula/notation/write.ts';
import { line, paragraphs } from './html.ts';
import type { Part } from './item.ts';

/** Shares of a mark are per cent with five decimals, as the format’s own list of them is. */
export const percent = (credit: number): string => String(Number((100 * credit).toFixed(5)));

const entity = (sign: string): string => `&#${sign.charCodeAt(0)};`;

/** HTML of a question in whose text fields stand: an open brace in it would begin one. */
export const around = (html: string): string => html.replaceAll(/[{}]/g, entity);

/**
 * HTML inside a field. The format undoes one layer of entities in it; with its own signs as entities too, none of them
 * can end an answer, and no backslash is needed that some systems would leave standing.
 */
const inside = (html: string): string =>
  html.replaceAll(/[&~#={}%\\]/g, (sign) => (sign === '&' ? '&amp;' : entity(sign)));

const field = (type: string, answers: readonly (readonly [number, string, string])[]): string =>
  `{1:${type}:${answers
    .map(([credit, answer, say]) => {
      const share = credit === 1 ? '=' : `%${percent(credit)}%`;
      return `${share}${answer}${say && `#${inside(paragraphs(say))}`}`;
    })
    .join('~')}}`;

/** One part of an item as a field in the question’s own text, worth as much as any other: weights are whole numbers. */
export const clozeField = (part: Part): string => {
  switch (part.kind) {
    case 'number':
      return field(
        'NUMERICAL',
        // The same to both sides: the middle of what is accepted, and half its width.
        part.accepted.map(({ low, high, credit, say }) => [
          credit,
          `${shortest((low + high) / 2)}:${shortest((high - low) / 2)}`,
          say,
        ]),
      );
    case 'choice':
      return field(
        part.many ? 'MULTIRESPONSE' : 'MULTICHOICE_V',
        part.options.map(({ text, credit, say }) => [credit, inside(line(text)), say]),
      );
    case 'open':
      throw new Error('A field in a text holds no open answer.');
  }
};
