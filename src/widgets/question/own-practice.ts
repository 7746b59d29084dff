import type { Practice } from '../../exercises/practice.ts';
import { dueNow, isDue, when, why } from '../../exercises/review.ts';
import { button, make, one, setText } from '../parts/dom.ts';
import type { Entry } from './bank.ts';

/** What the page says of a reader’s own practice: the streak, and what is to come again, when and why. */
export const showOwn = (
  root: ParentNode,
  { streak, best, due }: Practice,
  kept: boolean,
  bank: readonly Entry[],
  now: number,
): void => {
  setText(
    one(root, '[data-streak]'),
    best === 0
      ? 'Nothing has come right at the first try yet.'
      : `${streak} right in a row at the first try; the longest row so far is ${best}.`,
  );
  const known = due
    .flatMap((one) => {
      const entry = bank.find(({ template }) => template.id === one.template);
      return entry ? [{ one, title: entry.template.title }] : [];
    })
    .toSorted((a, b) => a.one.at - b.one.at);
  const ready = dueNow(due, now).length;
  setText(
    one(root, '[data-review]'),
    known.length === 0
      ? 'What goes wrong comes again with other numbers after a day, and when it comes right after 3, 7 and 21 days more. Nothing is waiting.'
      : `What went wrong comes again with other numbers. ${ready === 0 ? 'Nothing is due yet.' : `${ready} of ${known.length} ${ready === 1 ? 'is' : 'are'} due.`}`,
  );
  one(root, '.review-list')?.replaceChildren(
    ...known.map(({ one: each, title }) => {
      const item = make('li', '', { 'data-due': String(isDue(each, now)) });
      item.append(
        button(title, { 'data-review-of': each.template }),
        ' ',
        make('span', `${when(each, now)}: ${why(each, now)}`, { class: 'more' }),
      );
      return item;
    }),
  );
  setText(
    one(root, '[data-kept]'),
    kept
      ? 'This is kept in this browser, and nowhere else.'
      : 'This lasts as long as the page is open.',
  );
};
