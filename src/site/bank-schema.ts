import { z } from 'astro/zod';

/** What an exercise template must look like; an author’s mistake stops the build with the file’s name and a sentence. */

const id = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'An id is kebab-case, and never changes.');
const sentence = z.string().min(3, 'Expected a sentence; see a neighbouring file.');
/** YAML reads `iso: 100` as a number; we keep texts. */
const text = z.union([z.string(), z.number()]).transform(String);
const given = z.record(z.string(), text).default({});

const drawn = z.union([
  z.strictObject({ pick: z.array(text).min(2, 'Pick from at least two.') }),
  z.strictObject({ from: text, to: text, step: text }),
]);
const worked = z.strictObject({ formula: id, given, result: id });

const common = {
  id,
  version: z.number().int().min(1),
  title: sentence,
  skill: z.string().min(3),
  difficulty: z.union([z.literal(1), z.literal(2), z.literal(3)]),
  formula: id,
  given,
  vary: z.record(id, drawn).default({}),
  also: z.record(id, worked).default({}),
  text: sentence,
  hints: z.array(sentence).min(2, 'Hints go in steps: write at least two.'),
  solution: sentence,
};

const ways = ['slip', 'factor', 'plus', 'turned', 'instead', 'worked'] as const;
const turn = z
  .strictObject({
    say: sentence,
    credit: z.number().min(0).max(0.9),
    slip: id.optional(),
    factor: z.number().optional(),
    plus: text.optional(),
    turned: z.enum(['over', 'round']).optional(),
    instead: id.optional(),
    worked: z.strictObject({ formula: id, given, result: id }).partial().optional(),
  })
  .refine(
    (one) => ways.filter((way) => one[way] !== undefined).length === 1,
    `A wrong turn is come by in exactly one way: ${ways.join(', ')}.`,
  );

const asking = {
  ask: id,
  turns: z.array(turn).min(1, 'Which wrong turn do students take? Name at least one.'),
  tolerance: z
    .union([
      z.strictObject({ relative: z.number().positive() }),
      z.strictObject({ absolute: text }),
      z.strictObject({ stops: text }),
    ])
    .optional(),
  alsoRight: z.array(id).default([]),
};

const series = z.strictObject({ input: id, values: z.array(text).min(2) });
const figure = z.union([
  z.strictObject({ show: z.literal('drawing'), formula: id, given, says: sentence }),
  z.strictObject({ show: z.literal('table'), formula: id, given, down: series, across: series }),
]);

export const template = z.discriminatedUnion('kind', [
  z.strictObject({ ...common, ...asking, kind: z.literal('numeric') }),
  z.strictObject({ ...common, ...asking, kind: z.literal('reading'), figure }),
  z.strictObject({
    ...common,
    kind: z.literal('choice'),
    keepOrder: z.boolean().default(false),
    options: z
      .array(z.strictObject({ text, right: z.boolean().default(false), feedback: sentence }))
      .min(3)
      .refine((all) => all.some(({ right }) => right), 'At least one answer has `right: true`.'),
  }),
  z.strictObject({
    ...common,
    ...asking,
    kind: z.literal('mistake'),
    lines: z
      .array(
        z.strictObject({ text: sentence, wrong: z.boolean().default(false), feedback: sentence }),
      )
      .min(3)
      .refine(
        (all) => all.filter(({ wrong }) => wrong).length === 1,
        'Exactly one line has `wrong: true`.',
      ),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('design'),
    settings: z.array(z.strictObject({ name: id, formula: id, input: id })).min(2),
    requirements: z
      .array(
        z
          .strictObject({
            say: sentence,
            formula: id,
            given,
            result: id,
            atLeast: text.optional(),
            atMost: text.optional(),
            is: text.optional(),
          })
          .refine(
            ({ atLeast, atMost, is }) =>
              [atLeast, atMost, is].filter((it) => it !== undefined).length === 1,
            'A requirement has one of atLeast, atMost and is.',
          ),
      )
      .min(3, 'A design keeps at least three requirements.'),
    accepted: z.array(given).min(1),
    nearMiss: z.array(given).min(1),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('practical'),
    measured: z.array(id).min(1),
    compare: id,
    gap: sentence,
    rubric: z
      .array(z.strictObject({ text: sentence, points: z.number().int().min(1).max(5) }))
      .min(2),
  }),
]);
