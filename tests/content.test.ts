import { existsSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { evaluateText } from '../src/formula/evaluate.ts';
import { idOf } from '../src/formula/record.ts';
import { formulas } from '../src/formulas.ts';
import { LESSON } from '../src/site/front-matter.ts';
import { readExercises, readLessons, readMarkdown, readTerms, textOf } from './support/content.ts';
import { filesUnder, root } from './support/files.ts';

const lessons = readLessons();
const exercises = readExercises();
const terms = readTerms();
const strings = (value: unknown): string[] => (Array.isArray(value) ? value.map(String) : []);
const repeated = (all: readonly string[]): string[] =>
  all.filter((one, index) => all.indexOf(one) !== index);

describe('the curriculum', () => {
  it('is the seven lessons of the focal-length unit, numbered without a gap', () => {
    expect(lessons.filter(({ order }) => order.startsWith('1.')).map(({ order }) => order)).toEqual(
      ['01', '02', '03', '04', '05', '06', '07'].map((number) => `1.${number}`),
    );
  });

  it('never uses an id twice', () => {
    expect(repeated(lessons.map(({ data }) => String(data['id'])))).toEqual([]);
    expect(repeated(exercises.map(({ data }) => String(data['id'])))).toEqual([]);
    expect(repeated(terms)).toEqual([]);
  });

  it('leaves no formula without a lesson', () => {
    const taught = lessons.flatMap(({ data }) => strings(data['formulas']));
    expect(Object.keys(formulas).filter((id) => !taught.includes(id))).toEqual([]);
  });
});

describe.each(lessons)('lesson $order $slug', ({ data, body, file, folder, order, slug }) => {
  it('has complete front matter', () => {
    expect(data['id']).toBe(slug);
    expect(data['title']).toMatch(/\S/);
    expect(data['question']).toMatch(/\?$/);
    expect(strings(data['outcomes']).length).toBeGreaterThanOrEqual(LESSON.outcomes);
    expect(data['minutes']).toBeGreaterThanOrEqual(LESSON.minutes[0]);
    expect(data['minutes']).toBeLessThanOrEqual(LESSON.minutes[1]);
  });

  it('needs only lessons that come before it', () => {
    const before = lessons.filter((other) => other.order < order).map((other) => other.data['id']);
    expect(strings(data['needs']).filter((id) => !before.includes(id))).toEqual([]);
  });

  it('has a plate for each formula it names, and names each that it has', () => {
    // A folder without a calculator holds a still plate, which belongs to no formula alone.
    const plates = [...body.matchAll(/from '~\/widgets\/([\w-]+)\/index\.astro'/g)]
      .map(([, id]) => id)
      .filter((id) => existsSync(join(root, `src/widgets/${id ?? ''}/calculator.ts`)));
    expect(strings(data['formulas']).filter((id) => !Object.hasOwn(formulas, id))).toEqual([]);
    expect(plates.filter((id) => !strings(data['formulas']).includes(id ?? ''))).toEqual([]);
    for (const [, name, id] of body.matchAll(
      /import (\w+) from '~\/widgets\/([\w-]+)\/index\.astro'/g,
    )) {
      expect(body, `${id ?? ''} is imported and not placed`).toContain(`<${name ?? ''}`);
    }
  });

  it.each(['Predict', 'Misconception', 'Practical'])('has a %s', (part) => {
    expect(body).toMatch(new RegExp(`<${part}[\\s>]`));
  });

  it('says where its model breaks and links on', () => {
    expect(body).toMatch(/^## .*\bmodel\b/im);
    expect(body).toMatch(/\]\([^)]*\/[^)]*\)|href=/);
  });

  it('uses only terms that the glossary has', () => {
    const used = [...body.matchAll(/<Term\s+id="([^"]+)"/g)].map(([, id]) => id ?? '');
    expect(used.length).toBeGreaterThan(0);
    expect(used.filter((id) => !terms.includes(id))).toEqual([]);
  });

  it('gives every figure words, and has every figure it shows', () => {
    for (const [, alt, path] of body.matchAll(/!\[([^\]]*)\]\(([^)\s]+)[^)]*\)/g)) {
      expect(alt, `${path ?? ''} in ${file}`).toMatch(/\w+ \w+/);
      expect(existsSync(join(root, folder, path ?? '')), path).toBe(true);
    }
    for (const [tag] of body.matchAll(/<(?:img|svg)\b[^>]*>/g)) {
      expect(tag).toMatch(/\balt="[^"]+"|\baria-label="[^"]+"|\baria-labelledby=/);
    }
  });

  it('has at least three quick questions', () => {
    const own = exercises.filter((exercise) => exercise.file.startsWith(`${folder}/exercises/`));
    expect(own.length).toBeGreaterThanOrEqual(3);
  });

  it('computes what it prints', async () => {
    const computed = [...body.matchAll(/<Computed\s([^>]*)\/>/g)].map(
      ([, written = '']): Partial<Record<string, string>> =>
        Object.fromEntries(
          [...written.matchAll(/([\w-]+)="([^"]*)"/g)].map(([, key = '', value = '']) => [
            key,
            value,
          ]),
        ) as Partial<Record<string, string>>,
    );
    for (const attributes of computed) {
      const { formula = '', given = '', result = '' } = attributes;
      const load = formulas[formula];
      if (load === undefined) throw new Error(`${file}: no formula "${formula}"`);
      const pairs = given
        .split(/\s+(?=[\w-]+=)/)
        .filter((pair) => pair.trim() !== '')
        .map((pair) => pair.trim().split(/=([^]*)/, 2) as [string, string]);
      const { results } = evaluateText((await load()).default, pairs);
      expect(results, `${formula} has no result "${result}"`).toHaveProperty([result]);
    }
  });
});

describe.each(exercises)('$file', ({ data }) => {
  const given = (data['given'] ?? {}) as Record<string, string>;

  it('has what every exercise has', () => {
    expect(data['id']).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    expect(data['version']).toBeGreaterThanOrEqual(1);
    expect(['numeric', 'choice']).toContain(data['kind']);
    expect([1, 2, 3]).toContain(data['difficulty']);
    for (const key of ['question', 'explain', 'skill']) expect(data[key], key).toMatch(/\S/);
  });

  it('has a worked answer where it asks for a number', async () => {
    if (data['kind'] !== 'numeric' && data['formula'] === undefined) {
      expect(data['choices']).toBeDefined();
      return;
    }
    const load = formulas[String(data['formula'])];
    if (load === undefined) throw new Error(`There is no formula "${String(data['formula'])}".`);
    const formula = (await load()).default;
    const pairs = Object.entries(given).map(([id, text]): [string, string] => [id, text]);
    const ask = String(data['ask']);
    const asksInput = Object.values(formula.inputs).some((input) => idOf(input) === ask);
    if (asksInput) pairs.push([ask, '?']);
    const { results } = evaluateText(formula, pairs);
    expect(Object.keys(results)).toContain(ask);
    expect(results[ask]?.value ?? results[ask]?.infinite).not.toBeNull();
  });

  it('offers choices of which exactly one is right, each answered', () => {
    if (data['kind'] !== 'choice') {
      expect(data['choices']).toBeUndefined();
      return;
    }
    const choices = data['choices'] as { text: string; right?: boolean; feedback?: string }[];
    expect(choices.length).toBeGreaterThan(1);
    expect(choices.filter(({ right }) => right === true)).toHaveLength(1);
    for (const { text, feedback } of choices) {
      expect(text).toMatch(/\S/);
      expect(feedback).toMatch(/\S/);
    }
  });
});

describe('the glossary', () => {
  it.each(terms)('%s is a term with a meaning, and points to terms that exist', (id) => {
    const { data, body } = readMarkdown(`content/glossary/${id}.md`);
    expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    expect(data['term']).toMatch(/\S/);
    expect(body.trim().length).toBeGreaterThan(20);
    expect(strings(data['see']).filter((other) => !terms.includes(other))).toEqual([]);
  });

  it('has terms', () => {
    expect(terms.length).toBeGreaterThan(20);
  });
});

it('leaves nothing half done in what people read', () => {
  const unfinished = filesUnder('content').filter((file) =>
    /\b(TODO|FIXME|TBD|lorem ipsum)\b/i.test(textOf(file)),
  );
  expect(unfinished.map((file) => basename(file))).toEqual([]);
});
