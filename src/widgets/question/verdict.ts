import { tooCoarse } from '../../exercises/mark.ts';
import type { Marked } from '../../exercises/marked.ts';
import type { Gap } from '../../exercises/practical.ts';
import type { Raw } from '../../exercises/result-file.ts';
import type { Asking, Template } from '../../exercises/template.ts';
import { keyOf, type Formulas, type Variant } from '../../exercises/variant.ts';
import type { Digits } from '../../formula/record.ts';
import { showResult } from '../../formula/show.ts';
import { writeNumber, type Style } from '../../formula/notation/write.ts';
import { make } from '../parts/dom.ts';
import { leaning, paragraphs } from './prose.ts';

/** What came of an answer, in words for the page and for those who listen. */
export const verdictText = ({ verdict, credit, accepted }: Marked): string => {
  const range = accepted === undefined ? '' : ` Anything from ${accepted} is taken.`;
  switch (verdict.kind) {
    case 'right':
      return `Right${verdict.because === undefined ? '' : `, ${verdict.because}`}.${range}`;
    case 'turn':
      return `Not quite: ${Math.round((credit ?? 0) * 100)} % of the mark. ${verdict.say}`.trim();
    case 'wrong':
      return `Not right. ${verdict.say ?? ''}`.trim();
    case 'design': {
      const kept = verdict.held.filter((one) => one.kept).length;
      return `${kept} of ${verdict.held.length} kept.`;
    }
    case 'judge':
      return 'Compared with the formula; your instructor judges it by the rubric.';
    default:
      return verdict.say;
  }
};

/** Told apart by a sign and a word, and by the line beside it; by colour last. */
type Look = 'right' | 'part' | 'wrong' | 'open' | 'judge';
const SIGNS: Readonly<Record<Look, string>> = {
  right: '✓',
  part: '◑',
  wrong: '✗',
  open: '?',
  judge: '≈',
};

const head = (look: Look, word: string, rest = ''): Element => {
  const line = make('p', '', { class: 'verdict-head' });
  line.append(
    make('span', SIGNS[look], { class: 'verdict-sign', 'aria-hidden': 'true' }),
    ' ',
    make('strong', word),
    ...leaning(rest === '' ? '' : ` ${rest}`),
  );
  return line;
};

const lookOf = ({ credit, verdict }: Marked): Look => {
  if (verdict.kind === 'judge' || credit === undefined) return 'judge';
  if (verdict.kind === 'unreadable' || verdict.kind === 'ambiguous') return 'open';
  return credit === 1 ? 'right' : credit > 0 ? 'part' : 'wrong';
};

const wordOf: Readonly<Record<Look, string>> = {
  right: 'Right.',
  part: 'Not quite:',
  wrong: 'Not right.',
  open: '',
  judge: '',
};

/** To someone who is wrong in no way that is known. */
const ON = 'Try once more, take a hint, or see how it is worked out, and what is taken.';

/** “Lines 2 and 4 are not kept.” */
const missing = (places: readonly number[]): string => {
  const last = places.at(-1) ?? 0;
  const list = places.length > 1 ? `${places.slice(0, -1).join(', ')} and ${last}` : String(last);
  return `${places.length > 1 ? `Lines ${list} are` : `Line ${list} is`} not kept: see the margins above.`;
};

/** What was chosen, each with what there is to say of it. */
const remarks = (
  things: readonly { readonly text: string; readonly good: boolean; readonly feedback: string }[],
): Element[] => {
  if (things.length === 1) return paragraphs(things[0]?.feedback ?? '');
  const list = make('ul', '', { class: 'verdict-list' });
  for (const { text, good, feedback } of things) {
    const item = make('li', '');
    item.append(
      make('span', good ? '✓' : '✗', { class: 'verdict-sign', 'aria-hidden': 'true' }),
      ' ',
      make('span', good ? 'Right: ' : 'Not right: ', { class: 'visually-hidden' }),
      make('em', text.replace(/\.$/, '')),
      make('br', ''),
      ...leaning(feedback),
    );
    list.append(item);
  }
  return [list];
};

const gapWords = (gap: Extract<Gap, { kind: 'compared' }>, style: Style): string => {
  const { asked, computed, measured, inStops } = gap;
  const { name, unit, imperial, digits = 3 } = asked;
  const write = (si: number, as: Digits = digits): string =>
    showResult({ name, unit, digits: as, ...(imperial && { imperial }) }, si, style);
  const off = Math.abs(gap.gap);
  const size = inStops
    ? showResult({ name: '', unit: 'stop', digits: { decimals: 2 } }, off, style)
    : `${write(Math.abs(measured - computed), { significant: 2 })}, or ${writeNumber(off * 100, { decimals: 1 }, style)} %,`;
  const way =
    off < 1e-9 ? 'They agree.' : `Your reading is ${size} ${gap.gap > 0 ? 'more' : 'less'}.`;
  return `You read ${write(measured)}; from your other readings the formula gives ${write(computed)}. ${way}`;
};

/** What to say of one answer, kind by kind; with nothing that a student has not earned by answering. */
export const verdictOf = (
  result: Marked,
  raw: Raw,
  variant: Variant,
  formulas: Formulas,
  style: Style,
): { readonly look: Look; readonly elements: readonly Element[] } => {
  const { template } = variant;
  const { verdict, credit, accepted } = result;
  const say = (text: string): string => variant.say(text, style);
  const look = lookOf(result);
  const percent = `${Math.round((credit ?? 0) * 100)} % of the mark.`;
  const range = look === 'right' && accepted ? `Anything from ${accepted} is taken.` : '';
  const elements: Element[] = [];

  if (verdict.kind === 'unreadable' || verdict.kind === 'ambiguous')
    return { look, elements: [head(look, 'Not marked.', verdict.say)] };
  switch (template.kind) {
    case 'choice': {
      const places = Array.isArray(raw) ? (raw as readonly number[]) : [];
      const chosen = places.flatMap((place) => template.options[place] ?? []);
      const rightly = chosen.filter(({ right }) => right).length;
      const wanting =
        credit === 1 || rightly === 0
          ? ''
          : rightly === chosen.length
            ? 'There is more that is right.'
            : 'A wrong one takes a right one’s part of the mark away.';
      elements.push(
        head(look, wordOf[look], [look === 'part' ? percent : '', wanting].filter(Boolean).join(' ')),
        ...remarks(chosen.map(({ text, right, feedback }) => ({ text: say(text), good: right, feedback: say(feedback) }))),
      ); // prettier-ignore
      break;
    }
    case 'mistake': {
      const parts = raw as Readonly<Record<string, string>>;
      const line = template.lines[Number(parts['line'])];
      const found = line?.wrong === true;
      const number = (credit ?? 0) - (found ? 0.5 : 0) > 0.49;
      const feedback = say(line?.feedback ?? '');
      const both = 'say' in verdict ? (verdict.say ?? '') : '';
      // What is said of the number follows what is said of a line that is not the one.
      const ofNumber = (found ? both : both.slice(feedback.length)).trim();
      elements.push(
        head(look, wordOf[look], look === 'part' ? percent : range),
        ...remarks([
          { text: 'The line', good: found, feedback },
          {
            text: 'The number',
            good: number,
            feedback: number
              ? 'That is what should have come out.'
              : ofNumber || 'That is not what should have come out.',
          },
        ]),
      );
      break;
    }
    case 'design': {
      const held = verdict.kind === 'design' ? verdict.held : [];
      const not = held.flatMap(({ kept }, i) => (kept ? [] : [i + 1]));
      elements.push(
        not.length === 0
          ? head(look, `All ${held.length} are kept.`, 'The brief is met. Other settings may meet it, too.')
          : head(look, `${held.length - not.length} of ${held.length} are kept.`, missing(not)),
      ); // prettier-ignore
      break;
    }
    case 'practical':
      if (result.gap?.kind !== 'compared') break;
      elements.push(
        head(look, 'Compared.', gapWords(result.gap, style)),
        ...paragraphs(say(template.gap)),
        make('p', 'Nobody but you can see your set. These are the points to judge it by:'),
      );
      elements.push(rubric(template));
      break;
    case 'numeric':
    case 'reading': {
      const because = verdict.kind === 'right' && verdict.because ? `Read ${verdict.because}.` : '';
      elements.push(
        head(look, wordOf[look], [look === 'part' ? percent : '', because, range].filter(Boolean).join(' ')),
        ...paragraphs('say' in verdict && verdict.say ? verdict.say : look === 'wrong' ? ON : ''),
      ); // prettier-ignore
    }
  }
  if ('ask' in template) {
    const number =
      typeof raw === 'string' ? raw : String((raw as Record<string, string>)['number']);
    const key = keyOf(variant as Variant<Extract<Template, Asking>>, formulas);
    const coarse = tooCoarse(number, key);
    if (coarse) elements.push(make('p', coarse));
  }
  return { look, elements };
};

const rubric = (template: Extract<Template, { kind: 'practical' }>): Element => {
  const list = make('ul', '', { class: 'verdict-list' });
  for (const { text, points } of template.rubric)
    list.append(make('li', `${text} (${points} ${points === 1 ? 'point' : 'points'})`));
  return list;
};
