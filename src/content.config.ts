import { glob } from 'astro/loaders';
import { defineCollection } from 'astro:content';
import { z } from 'astro/zod';
import { template } from './site/bank-schema.ts';
import { LESSON } from './site/front-matter.ts';
import { quickTableFile } from './site/quick-table-file.ts';

const id = z
  .string()
  .regex(
    /^[a-z0-9]+(-[a-z0-9]+)*$/,
    'An id is kebab-case, such as “angle-of-view”, and never changes.',
  );
const sentence = z.string().min(3, 'Expected a sentence; see a neighbouring file.');
/** YAML reads `given: { iso: 100 }` as a number; we keep texts. */
const text = z.union([z.string(), z.number()]).transform(String);

/** `1-focal-length/01-angle-of-view/index.mdx` is read at `focal-length/angle-of-view`: numbers order, and never show. */
const address = ({ entry }: { entry: string }): string =>
  entry
    .replace(/(^|\/)(index)?\.(mdx?|ya?ml)$/, '')
    .replace(/\.(mdx?|ya?ml)$/, '')
    .split('/')
    .map((part) => part.replace(/^\d+-/, ''))
    .join('/');

const units = defineCollection({
  loader: glob({ base: './content/lessons', pattern: '*/index.md', generateId: address }),
  schema: z.strictObject({ title: sentence, question: sentence, blurb: sentence }),
});

const lessons = defineCollection({
  loader: glob({ base: './content/lessons', pattern: '*/*/index.mdx', generateId: address }),
  schema: z.strictObject({
    id,
    title: sentence,
    question: sentence.refine(
      (asked) => asked.endsWith('?'),
      'The studio question ends in a question mark.',
    ),
    outcomes: z
      .array(sentence)
      .min(
        LESSON.outcomes,
        `What can a reader do after this lesson? Name at least ${LESSON.outcomes}.`,
      ),
    needs: z.array(id),
    formulas: z.array(id),
    minutes: z.number().int().min(LESSON.minutes[0]).max(LESSON.minutes[1]),
  }),
});

const glossary = defineCollection({
  loader: glob({ base: './content/glossary', pattern: '*.md', generateId: address }),
  schema: z.strictObject({
    term: z.string().min(1),
    also: z.array(z.string()).default([]),
    symbol: z.string().optional(),
    see: z.array(id).default([]),
    source: id.optional(),
  }),
});

const asked = {
  id,
  version: z.literal(1),
  skill: z.string().min(3),
  difficulty: z.number().int().min(1).max(3),
  question: sentence,
  explain: sentence,
  formula: id,
  given: z.record(z.string(), text),
  ask: id,
  /** Further numbers the explanation needs, each worked out by a formula: {name} in the text. */
  also: z
    .record(
      z.string(),
      z.strictObject({ formula: id, given: z.record(z.string(), text), result: id }),
    )
    .default({}),
};

const exercises = defineCollection({
  loader: glob({
    base: './content',
    pattern: 'lessons/*/*/exercises/*.yaml',
    generateId: address,
  }),
  schema: z.discriminatedUnion('kind', [
    z.strictObject({
      ...asked,
      kind: z.literal('numeric'),
      tolerance: z
        .union([
          z.strictObject({ relative: z.number().positive() }),
          z.strictObject({ absolute: text }),
        ])
        .optional(),
    }),
    z.strictObject({
      ...asked,
      kind: z.literal('choice'),
      // A question in words still names the formula it belongs to, and may compute for its explanation.
      given: asked.given.default({}),
      ask: id.optional(),
      tolerance: z.undefined().optional(),
      choices: z
        .array(
          z.strictObject({ text: text, right: z.literal(true).optional(), feedback: sentence }),
        )
        .min(2)
        .refine(
          (choices) => choices.filter((choice) => choice.right).length === 1,
          'Exactly one choice has `right: true`.',
        ),
    }),
  ]),
});

/** Exercises to practise and to assign: drawn from a seed, marked, and in a lesson’s `bank` or, where they cross units, in `exercises`. */
const bank = defineCollection({
  loader: glob({
    base: './content',
    pattern: '{lessons/*/*/bank,exercises}/*.yaml',
    generateId: address,
  }),
  schema: template,
});

const pages = defineCollection({
  loader: glob({ base: './content/pages', pattern: '*.{md,mdx}', generateId: address }),
  schema: z.strictObject({ title: sentence, description: sentence, question: sentence.optional() }),
});

const checklists = defineCollection({
  loader: glob({ base: './content/checklists', pattern: '*.yaml', generateId: address }),
  schema: z.strictObject({
    title: sentence,
    order: z.number().int().min(1),
    /** Who goes through it, and when. */
    for: sentence,
    /** The lesson it belongs to, by its permanent id. */
    lesson: id,
    /** What stands with the list as its caution, and who decides. */
    caution: sentence,
    decides: sentence,
    items: z
      .array(
        z.strictObject({
          /** Kept in readers’ browsers: it never changes, and is never used again for another thing. */
          id,
          text: sentence,
          why: sentence,
          /** An id of shared/sources.json, or one of the two words for having none. */
          source: z.union([z.enum(['common practice, no source', 'from memory']), id]),
        }),
      )
      .min(3)
      .refine(
        (items) => new Set(items.map((item) => item.id)).size === items.length,
        'Two items have the same id.',
      ),
  }),
});

const tables = defineCollection({
  loader: glob({ base: './content/tables', pattern: '*.yaml', generateId: address }),
  schema: quickTableFile,
});

export const collections = { units, lessons, glossary, exercises, bank, pages, checklists, tables };
