import { shortest } from '../../formula/notation/write.ts';
import { base64 } from './base64.ts';
import { bodyOf, rubricOf } from './body.ts';
import { escape, line, paragraphs } from './html.ts';
import type { Item, Part } from './item.ts';

/** HTML inside this XML is text. */
const html = (name: string, inner: string, files = ''): string =>
  `<${name} format="html"><text>${escape(inner)}</text>${files}</${name}>`;

/** Shares of a mark are per cent with five decimals, as the format’s own list of them is. */
export const percent = (credit: number): string => String(Number((100 * credit).toFixed(5)));

/** A tolerance here is the same to both sides: the middle of what is accepted, and half its width. */
const number = ({ accepted }: Extract<Part, { kind: 'number' }>): string =>
  accepted
    .map(
      ({ low, high, credit, say }) =>
        `<answer fraction="${percent(credit)}" format="moodle_auto_format"><text>${shortest((low + high) / 2)}</text><tolerance>${shortest((high - low) / 2)}</tolerance>${html('feedback', paragraphs(say))}</answer>`,
    )
    .join('') +
  '<unitgradingtype>0</unitgradingtype><unitpenalty>0</unitpenalty><showunits>3</showunits><unitsleft>0</unitsleft>';

const choice = ({ many, options }: Extract<Part, { kind: 'choice' }>): string =>
  `<single>${!many}</single><shuffleanswers>0</shuffleanswers><answernumbering>abc</answernumbering>` +
  options
    .map(
      ({ text, credit, say }) =>
        `<answer fraction="${percent(credit)}" format="html"><text>${escape(line(text))}</text>${html('feedback', paragraphs(say))}</answer>`,
    )
    .join('');

const open = ({ rubric }: Extract<Part, { kind: 'open' }>, solution: string): string =>
  '<responseformat>editor</responseformat><responserequired>1</responserequired><responsefieldlines>15</responsefieldlines><attachments>0</attachments>' +
  html('graderinfo', rubricOf(rubric, solution));

const TYPE = { number: 'numerical', choice: 'multichoice', open: 'essay' } as const;

const question = (item: Item, part: Part, at: number): string => {
  const { figure, parts, id, title, hints, solution } = item;
  const drawing =
    figure?.show === 'drawing'
      ? `<file name="drawing.svg" path="/" encoding="base64">${base64(figure.drawing.svg)}</file>`
      : '';
  const place = parts.length > 1 ? ` (${at + 1} of ${parts.length})` : '';
  // The whole of the question stands over each of its parts: the format has no two fields marked as one.
  const lines =
    part.kind === 'number'
      ? parts.flatMap((one) => (one.kind === 'choice' ? one.options.map(({ text }) => text) : []))
      : [];
  const body = `${bodyOf({ ...item, lines: [...item.lines, ...lines] }, '@@PLUGINFILE@@/drawing.svg')}<p>${line(part.prompt)}</p>`;
  return (
    `<question type="${TYPE[part.kind]}"><name><text>${escape(title + place)}</text></name>` +
    html('questiontext', body, drawing) +
    // What would tell an essay’s answer is for the person who marks it.
    html('generalfeedback', part.kind === 'open' ? '' : paragraphs(solution)) +
    `<defaultgrade>${part.weight}</defaultgrade><penalty>0.1</penalty><hidden>0</hidden><idnumber>${escape(parts.length > 1 ? `${id}.${part.id}` : id)}</idnumber>` +
    (part.kind === 'number'
      ? number(part)
      : part.kind === 'choice'
        ? choice(part)
        : open(part, solution)) +
    hints.map((hint) => html('hint', paragraphs(hint))).join('') +
    '</question>\n'
  );
};

/** Items as Moodle XML, in a category named after the title. */
export const moodleXml = (items: readonly Item[], title: string): string => {
  const category = title.replaceAll('/', '//');
  return `<?xml version="1.0" encoding="UTF-8"?>\n<quiz>\n<question type="category"><category><text>$course$/top/${escape(category)}</text></category></question>\n${items.flatMap((item) => item.parts.map((part, at) => question(item, part, at))).join('')}</quiz>\n`;
};
