import { z } from 'astro/zod';

const id = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'An id is kebab-case, such as “depth-of-field”.');
const sentence = z.string().min(3, 'Expected a sentence; see a neighbouring file.');
const text = z.union([z.string(), z.number()]).transform(String);
const given = z.record(id, text);

/** Where the lines of shared data come from; src/site/quick-table-data.ts reads them. */
export const SHARED = ['shots', 'gels', 'papers'] as const;

const axis = z.union(
  [
    z.strictObject({
      input: id,
      /** What the side is called, where the input's own name would not do. */
      name: z.string().min(2).optional(),
      values: z.array(text).min(2),
      imperial: z.array(text).min(2).optional(),
    }),
    z.strictObject({
      input: id,
      /** What the side is called, where the input's own name would not do. */
      name: z.string().min(2).optional(),
      from: z.number(),
      to: z.number(),
      step: z.number().positive(),
      unit: z.string().min(1),
      imperial: z.array(text).min(2).optional(),
    }),
    z.strictObject({
      name: sentence,
      rows: z.array(z.strictObject({ label: text, given })).min(2),
    }),
    z.strictObject({ name: sentence, shared: z.enum(SHARED), only: z.array(id).optional() }),
  ],
  'A side has an input with values, or with from, to, step and unit; or a name with rows, or with shared.',
);

/** What content/tables/<id>.yaml may say. */
export const quickTableFile = z.strictObject({
  title: sentence,
  question: sentence.refine(
    (asked) => asked.endsWith('?'),
    'The studio question ends in a question mark.',
  ),
  /** The studio question it stands under on the page of all tables. */
  group: z.enum(['camera', 'focus', 'exposure', 'lights', 'set']),
  order: z.number().int().min(1),
  formula: id,
  /** Ids of results: with `across` they share a cell, without it each has its column. */
  results: z.array(id).min(1),
  joiner: z.string().optional(),
  /** What a result is called here, by its id, where its own name would not do. */
  names: z.record(id, z.string().min(3)).default({}),
  down: axis,
  across: axis.optional(),
  /** One table for each of these values, to choose from. */
  each: z.strictObject({ input: id, values: z.array(text).min(2).max(8) }).optional(),
  fixed: given.default({}),
  /** Where the number is about something that can hurt: what to mind, and who decides. */
  caution: z.strictObject({ who: sentence, text: sentence }).optional(),
  notes: z.array(sentence).default([]),
  /** Sources of what the formula does not name itself: ids of the bibliography. */
  sources: z.array(id).default([]),
  /** The lines and columns of the folded card, as written above; all of them where it says nothing. */
  pocket: z
    .strictObject({ down: z.array(text).optional(), across: z.array(text).optional() })
    .default({}),
});

export type QuickTableFile = z.infer<typeof quickTableFile>;
export type AxisFile = QuickTableFile['down'];
