import { numberIn, wordsOf, type CourseItem } from './course-item.ts';

/** Cuts a text before every sign that stands by itself, and not behind a backslash. */
const split = (text: string, signs: string): readonly string[] =>
  text.match(new RegExp(`(?:^|[${signs}])(?:\\\\[^]|[^\\\\${signs}])*`, 'g')) ?? [''];

/** A text without its backslashes; a sign of the format that has none would have ended it. */
const bare = (text: string): string => {
  if (/^(?:\\[^]|[^\\])*?[~=#{}:]/.test(text)) throw new Error(`A sign stands bare in ${text}`);
  return text.replaceAll(/\\([^])/g, (_all, sign: string) => (sign === 'n' ? '\n' : sign)).trim();
};

const questionOf = (text: string) => {
  const [, title = '', stem = '', block = ''] =
    /^::((?:\\[^]|[^\\:])*)::\[html\]((?:\\[^]|[^\\{])*)\{((?:\\[^]|[^\\}])*)\}\s*$/.exec(text) ??
    [];
  if (title === '') throw new Error(`No question: ${text.slice(0, 200)}`);
  const numeric = block.startsWith('#\n');
  const [inner = ''] = (numeric ? block.slice(1) : block).split('####');
  const answers = split(inner, '=~')
    .slice(1)
    .map((piece) => {
      const sign = piece[0];
      const [, share, rest = ''] = /^(?:%(-?[\d.]+)%)?([^]*)$/.exec(piece.slice(1)) ?? [];
      const [answer = '', ...say] = split(rest, '#');
      return {
        credit: share === undefined ? (sign === '=' ? 1 : 0) : Number(share) / 100,
        answer: bare(answer),
        say: wordsOf(bare(say.join('').replace(/^#/, ''))),
      };
    });
  return {
    title: bare(title),
    shown: wordsOf(bare(stem)),
    mark: ({ number = '', options = [] }: Parameters<CourseItem['mark']>[0]) => {
      if (answers.length === 0) return { credit: undefined, say: '' };
      const x = numberIn(number);
      const first = answers.find(({ answer }) => {
        const [low = '', high = ''] = answer.split('..');
        return x !== undefined && x >= Number(low) && x <= Number(high);
      });
      const hits = numeric
        ? first
          ? [first]
          : []
        : answers.filter(({ answer }) => options.includes(wordsOf(answer)));
      const sum = hits.reduce((total, { credit }) => total + credit, 0);
      return {
        credit: Math.min(1, Math.max(0, sum)),
        say: hits.map(({ say }) => say).join(' '),
      };
    },
  };
};

/** Parts of one item, each worth as much as any other: the format cannot say otherwise. */
const together = (parts: readonly CourseItem[]): CourseItem => ({
  title: parts[0]?.title ?? '',
  shown: parts.map(({ shown }) => shown).join(' '),
  mark: (entered) => {
    const marks = parts.map(({ mark }) => mark(entered));
    return {
      credit: marks.some(({ credit }) => credit === undefined)
        ? undefined
        : marks.reduce((sum, { credit = 0 }) => sum + credit, 0) / marks.length,
      say: marks.map(({ say }) => say).join(' '),
    };
  },
});

/** An id without the part of its item. */
const itemId = (id: string): string => id.replace(/\.(?:line|number)$/, '');

/** Reads GIFT back: blank lines part questions, and a comment before each names it. */
export const readGift = (bytes: Uint8Array): ReadonlyMap<string, CourseItem> => {
  const parts = new Map<string, ReturnType<typeof questionOf>[]>();
  for (const block of new TextDecoder().decode(bytes).split(/\n\s*\n/)) {
    if (block.startsWith('$CATEGORY:')) continue;
    const lines = block.split('\n');
    const id = itemId(/^\/\/ question: (.+)$/.exec(lines[0] ?? '')?.[1] ?? '');
    const text = lines.filter((one) => !one.startsWith('//')).join('\n');
    parts.set(id, [...(parts.get(id) ?? []), questionOf(text)]);
  }
  return new Map([...parts].map(([id, questions]) => [id, together(questions)]));
};
