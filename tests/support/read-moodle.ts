import { numberIn, wordsOf, type CourseItem, type Entered } from './course-item.ts';
import { child, readXml, type Node } from './xml.ts';

const textOf = (node: Node, name: string): string => child(child(node, name), 'text').text;

/** A thing to answer by itself, with its share of the mark. */
interface Field {
  readonly weight: number;
  readonly mark: CourseItem['mark'];
}

interface Answer {
  readonly fraction: number;
  readonly text: string;
  readonly say: string;
  readonly room: number;
}

/** The first answer that fits counts. */
const number = (answers: readonly Answer[], typed: string) => {
  const x = numberIn(typed);
  const hit =
    x === undefined
      ? undefined
      : answers.find(({ text, room }) => Math.abs(x - Number(text)) <= room);
  return { credit: hit?.fraction ?? 0, say: hit?.say ?? '' };
};

const choice = (answers: readonly Answer[], options: readonly string[]) => {
  const hits = answers.filter(({ text }) => options.includes(wordsOf(text)));
  const sum = hits.reduce((total, { fraction }) => total + fraction, 0);
  return { credit: Math.min(1, Math.max(0, sum)), say: hits.map(({ say }) => say).join(' ') };
};

const fieldOf = (question: Node): Field => {
  const type = question.attributes['type'];
  const answers = question.children
    .filter(({ name }) => name === 'answer')
    .map((answer) => ({
      fraction: Number(answer.attributes['fraction']) / 100,
      text: child(answer, 'text').text,
      say: wordsOf(textOf(answer, 'feedback')),
      room: Number(answer.children.find(({ name }) => name === 'tolerance')?.text),
    }));
  return {
    weight: Number(child(question, 'defaultgrade').text),
    mark: ({ number: typed = '', options = [] }: Entered) =>
      type === 'numerical'
        ? number(answers, typed)
        : type === 'multichoice'
          ? choice(answers, options)
          : { credit: undefined, say: '' },
  };
};

/** One layer of entities undone, as the format undoes it inside a field. */
const undone = (text: string): string =>
  text.replaceAll(/&(?:#(\d+)|amp);/g, (_all, code?: string) =>
    code === undefined ? '&' : String.fromCharCode(Number(code)),
  );

/** The parts of a field’s text between one sign, wherever no entity needs it. */
const between = (text: string, sign: '~' | '#'): readonly string[] =>
  text.split(sign === '~' ? /~/ : /(?<!&)#/);

/** A field inside a text: `{1:NUMERICAL:=2:0.1#right~%50%4:0.1#half}`. */
const innerField = (weight: string, type: string, block: string): Field => {
  const answers = between(block, '~').map((alternative): Answer => {
    const [, share = '', rest = ''] = /^(=|%[-\d.]+%)?([^]*)$/.exec(alternative) ?? [];
    const [text = '', ...say] = between(rest, '#');
    const [middle = '', room = ''] = text.split(':');
    const numeric = type === 'NUMERICAL';
    return {
      fraction: share === '=' ? 1 : Number(share.replaceAll('%', '')) / 100,
      text: numeric ? middle : undone(text),
      say: wordsOf(undone(say.join('#'))),
      room: numeric ? Number(room) : Number.NaN,
    };
  });
  return {
    weight: Number(weight),
    mark: ({ number: typed = '', options = [] }) =>
      type === 'NUMERICAL' ? number(answers, typed) : choice(answers, options),
  };
};

const FIELD = /\{(\d+):(NUMERICAL|MULTICHOICE_V|MULTIRESPONSE):([^}]*)\}/g;

const questionOf = (question: Node): CourseItem => {
  const text = textOf(question, 'questiontext');
  const cloze = question.attributes['type'] === 'cloze';
  const fields = cloze
    ? [...text.matchAll(FIELD)].map(([, weight = '', type = '', block = '']) =>
        innerField(weight, type, block),
      )
    : [fieldOf(question)];
  const around = cloze ? text.replaceAll(FIELD, '') : text;
  if (cloze && (fields.length < 2 || /[{}]/.test(around)))
    throw new Error(`A brace stands outside its field: ${around}`);
  return {
    title: textOf(question, 'name'),
    // Outside its fields a text is plain HTML: its braces are entities that wordsOf has no need to know.
    shown: wordsOf(around.replaceAll('&#123;', '{').replaceAll('&#125;', '}')),
    mark: (entered) => {
      const marks = fields.map(({ mark, weight }) => ({ ...mark(entered), weight }));
      const most = marks.reduce((sum, { weight }) => sum + weight, 0);
      return {
        credit: marks.some(({ credit }) => credit === undefined)
          ? undefined
          : marks.reduce((sum, { credit = 0, weight }) => sum + (credit * weight) / most, 0),
        say: marks.map(({ say }) => say).join(' '),
      };
    },
  };
};

/** Reads Moodle XML back: its items by their id numbers. */
export const readMoodle = (bytes: Uint8Array): ReadonlyMap<string, CourseItem> => {
  const quiz = readXml(new TextDecoder().decode(bytes));
  const items = new Map<string, CourseItem>();
  for (const question of quiz.children) {
    if (question.name !== 'question' || question.attributes['type'] === 'category') continue;
    const id = child(question, 'idnumber').text;
    if (items.has(id)) throw new Error(`${id} comes twice.`);
    items.set(id, questionOf(question));
  }
  return items;
};
