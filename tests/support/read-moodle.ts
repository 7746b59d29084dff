import { numberIn, wordsOf, type CourseItem, type Entered } from './course-item.ts';
import { child, readXml, type Node } from './xml.ts';

const textOf = (node: Node, name: string): string => child(child(node, name), 'text').text;

interface Question extends CourseItem {
  readonly weight: number;
}

const questionOf = (question: Node): Question => {
  const type = question.attributes['type'];
  const answers = question.children
    .filter(({ name }) => name === 'answer')
    .map((answer) => ({
      fraction: Number(answer.attributes['fraction']) / 100,
      text: child(answer, 'text').text,
      say: wordsOf(textOf(answer, 'feedback')),
      room: Number(answer.children.find(({ name }) => name === 'tolerance')?.text),
    }));
  const number = (typed: string) => {
    const x = numberIn(typed);
    // The first answer that fits counts.
    const hit =
      x === undefined
        ? undefined
        : answers.find(({ text, room }) => Math.abs(x - Number(text)) <= room);
    return { credit: hit?.fraction ?? 0, say: hit?.say ?? '' };
  };
  const choice = (options: readonly string[]) => {
    const hits = answers.filter(({ text }) => options.includes(wordsOf(text)));
    const sum = hits.reduce((total, { fraction }) => total + fraction, 0);
    return {
      credit: Math.min(1, Math.max(0, sum)),
      say: hits.map(({ say }) => say).join(' '),
    };
  };
  return {
    title: textOf(question, 'name'),
    shown: wordsOf(textOf(question, 'questiontext')),
    weight: Number(child(question, 'defaultgrade').text),
    mark: ({ number: typed = '', options = [] }: Entered) =>
      type === 'numerical'
        ? number(typed)
        : type === 'multichoice'
          ? choice(options)
          : { credit: undefined, say: '' },
  };
};

/** Questions whose ids differ in their part alone are one item, each with its share of the mark. */
export const together = (parts: readonly Question[]): CourseItem => ({
  title: parts[0]?.title ?? '',
  shown: parts.map(({ shown }) => shown).join(' '),
  mark: (entered) => {
    const marks = parts.map((part) => ({ ...part.mark(entered), weight: part.weight }));
    return {
      credit: marks.some(({ credit }) => credit === undefined)
        ? undefined
        : marks.reduce((sum, { credit = 0, weight }) => sum + credit * weight, 0),
      say: marks.map(({ say }) => say).join(' '),
    };
  },
});

/** An id without the part of its item. */
export const itemId = (id: string): string => id.replace(/\.(?:line|number)$/, '');

/** Reads Moodle XML back: its items by their id numbers. */
export const readMoodle = (bytes: Uint8Array): ReadonlyMap<string, CourseItem> => {
  const quiz = readXml(new TextDecoder().decode(bytes));
  const parts = new Map<string, Question[]>();
  for (const question of quiz.children) {
    if (question.name !== 'question' || question.attributes['type'] === 'category') continue;
    const id = itemId(child(question, 'idnumber').text);
    parts.set(id, [...(parts.get(id) ?? []), questionOf(question)]);
  }
  return new Map([...parts].map(([id, questions]) => [id, together(questions)]));
};
