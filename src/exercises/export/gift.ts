import { shortest } from '../../formula/notation/write.ts';
import { base64 } from './base64.ts';
import { bodyOf } from './body.ts';
import { line, paragraphs } from './html.ts';
import type { Item, Part } from './item.ts';
import { percent } from './cloze.ts';

/** GIFT’s own signs, with a backslash before each; a blank line would end the question, so lines are only marked. */
const guard = (text: string): string =>
  text.replaceAll(/[\\~=#{}:]/g, '\\$&').replaceAll(/\s*\n\s*/g, '\\n');

const said = (say: string): string => say && `#${guard(paragraphs(say))}`;

const answers = (part: Part): string => {
  switch (part.kind) {
    case 'number':
      return `#\n${part.accepted
        .map(
          ({ low, high, credit, say }) =>
            `=${credit === 1 ? '' : `%${percent(credit)}%`}${shortest(low)}..${shortest(high)}${said(say)}`,
        )
        .join('\n')}\n`;
    case 'choice':
      return `\n${part.options
        .map(({ text, credit, say }) => {
          const sign = part.many ? `~%${percent(credit)}%` : credit > 0 ? '=' : '~';
          return `${sign}${guard(line(text))}${said(say)}`;
        })
        .join('\n')}\n`;
    case 'open':
      return '';
  }
};

/** A comment, kept to one line and for whoever reads the file. */
const comment = (text: string): string => `// ${text.replaceAll(/\s+/g, ' ')}\n`;

const question = (item: Item, part: Part, at: number): string => {
  const { figure, parts, id, title, solution } = item;
  const src =
    figure?.show === 'drawing' ? `data:image/svg+xml;base64,${base64(figure.drawing.svg)}` : '';
  const lines =
    part.kind === 'number'
      ? parts.flatMap((one) => (one.kind === 'choice' ? one.options.map(({ text }) => text) : []))
      : [];
  const body = `${bodyOf({ ...item, lines: [...item.lines, ...lines] }, src)}<p>${line(part.prompt)}</p>`;
  const place = parts.length > 1 ? ` (${at + 1} of ${parts.length})` : '';
  const notes =
    part.kind === 'open'
      ? [
          ...part.rubric.map(({ text, points }) => `For the marker, ${points}: ${text}`),
          `For the marker: ${solution}`,
        ]
      : part.weight < 1
        ? [`This is worth ${part.weight} of a mark; the format cannot say so.`]
        : [];
  return (
    comment(`question: ${parts.length > 1 ? `${id}.${part.id}` : id}`) +
    notes.map(comment).join('') +
    `::${guard(title + place)}::[html]${guard(body)}{${answers(part)}` +
    (part.kind === 'open' ? '' : `####${guard(paragraphs(solution))}\n`) +
    '}\n'
  );
};

/** Items as GIFT, a blank line between them. */
export const gift = (items: readonly Item[], title: string): string =>
  [
    `$CATEGORY: $course$/top/${title.replaceAll('/', '//').replaceAll(/\s+/g, ' ')}\n`,
    ...items.flatMap((item) => item.parts.map((part, at) => question(item, part, at))),
  ].join('\n');
