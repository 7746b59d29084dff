import { shortest } from '../../formula/notation/write.ts';
import { base64 } from './base64.ts';
import { bodyOf, rubricOf } from './body.ts';
import { around, clozeField, percent } from './cloze.ts';
import { escape, line, paragraphs } from './html.ts';
import type { Item, Part } from './item.ts';

/** HTML inside this XML is text. */
const html = (name: string, inner: string, files = ''): string =>
  `<${name} format="html"><text>${escape(inner)}</text>${files}</${name}>`;

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

const answers = (part: Part, solution: string): string => {
  switch (part.kind) {
    case 'number':
      return number(part);
    case 'choice':
      return choice(part);
    case 'open':
      return open(part, solution);
  }
};

const question = (item: Item, price: string): string => {
  const { figure, parts, id, title, hints, solution } = item;
  const drawing =
    figure?.show === 'drawing'
      ? `<file name="drawing.svg" path="/" encoding="base64">${base64(figure.drawing.svg)}</file>`
      : '';
  const body = bodyOf(item, '@@PLUGINFILE@@/drawing.svg');
  const [only] = parts.length === 1 ? parts : [];
  const shown = only
    ? `${body}<p>${line(only.prompt)}</p>`
    : // Two answers to one question stand as fields in its text, so that they are never drawn or moved apart.
      around(body) +
      parts.map((part) => `<p>${around(line(part.prompt))}</p><p>${clozeField(part)}</p>`).join('');
  return (
    `<question type="${only ? TYPE[only.kind] : 'cloze'}"><name><text>${escape(title)}</text></name>` +
    html('questiontext', shown, drawing) +
    // What would tell an essay’s answer is for the person who marks it.
    html('generalfeedback', only?.kind === 'open' ? '' : paragraphs(solution)) +
    `${only ? `<defaultgrade>${only.weight}</defaultgrade>` : ''}<penalty>${price}</penalty><hidden>0</hidden><idnumber>${escape(id)}</idnumber>` +
    (only ? answers(only, solution) : '') +
    hints.map((hint) => html('hint', paragraphs(hint))).join('') +
    '</question>\n'
  );
};

/**
 * Items as Moodle XML, in a category named after the title.
 * @param hints what one costs; it follows a wrong try, and the price is the try’s
 */
export const moodleXml = (
  items: readonly Item[],
  title: string,
  hints: 'free' | 'tenth' | 'none',
): string => {
  const category = title.replaceAll('/', '//');
  const price = hints === 'tenth' ? '0.1' : '0';
  const told = hints === 'none' ? items.map((item) => ({ ...item, hints: [] })) : items;
  return `<?xml version="1.0" encoding="UTF-8"?>\n<quiz>\n<question type="category"><category><text>$course$/top/${escape(category)}</text></category></question>\n${told.map((item) => question(item, price)).join('')}</quiz>\n`;
};
