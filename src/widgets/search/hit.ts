import type { Entry } from '../../search/entry.ts';
import type { Answer } from './answer.ts';

const make = (name: string, className: string, ...children: (string | Node)[]): HTMLElement => {
  const made = document.createElement(name);
  if (className) made.className = className;
  made.append(...children);
  return made;
};

/** The f of f/4 is set in italics, here as on a plate. */
const fine = (text: string): (string | Node)[] =>
  text.split(/\b(f)(?=\/)/).map((piece, i) => (i % 2 ? make('i', '', piece) : piece));

const symbolOf = (symbol: string): HTMLElement => {
  const [letter = '', index] = symbol.split('_');
  return make('var', 'hit-symbol', letter, ...(index ? [make('sub', '', index)] : []));
};

/** What a result is, and where it stands. */
const kindOf = ({ kind, number, address }: Entry, titleOf: (address: string) => string): string =>
  kind === 'Part of a lesson'
    ? `Lesson ${number ?? ''}, ${titleOf(address.replace(/#.*/, ''))}`
    : [kind, number].filter(Boolean).join(' ');

/** One result: all of it is the link. */
export const hitItem = (
  entry: Entry,
  base: string,
  titleOf: (address: string) => string,
  answer?: Answer,
): HTMLElement => {
  const link = make(
    'a',
    'hit',
    make('span', 'hit-kind', kindOf(entry, titleOf)),
    make(
      'span',
      'hit-title',
      ...(entry.symbol ? [symbolOf(entry.symbol)] : []),
      ...fine(entry.title),
    ),
  );
  const says = answer?.says ?? entry.says;
  if (says)
    link.append(make('span', answer?.refused ? 'hit-says refused' : 'hit-says', ...fine(says)));
  if (answer?.with) link.append(make('span', 'hit-with', ...fine(answer.with)));
  link.setAttribute('href', base + (answer?.address ?? entry.address).slice(1));
  return make('li', '', link);
};

/** Words to look for instead, each a link to its own search. */
export const insteadItem = (titles: readonly string[], base: string): HTMLElement => {
  const links = titles.flatMap((title, i) => {
    const link = make('a', '', title);
    link.setAttribute('href', `${base}search/?${new URLSearchParams({ q: title })}`);
    return i === 0 ? [link] : [', ', link];
  });
  return make('p', '', ...(links.length > 0 ? ['Near it are: ', ...links, '.'] : []));
};
