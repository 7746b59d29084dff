import { getCollection, type CollectionEntry } from 'astro:content';
import { idOf } from '../formula/record.ts';
import { formulas } from '../formulas.ts';
import { computedText } from './computed.ts';
import { inlineMarkdown, markdown } from './markdown.ts';

export type Exercise = CollectionEntry<'exercises'>;

/** A question ready for the page: its texts as HTML, its numbers worked out. */
export interface Prepared {
  readonly id: string;
  readonly question: string;
  readonly explain: string;
  /** The computed answer, where the question asks for a number. */
  readonly answer: string | undefined;
  readonly choices: readonly {
    readonly text: string;
    readonly right: boolean;
    readonly feedback: string;
  }[];
}

/** The exercises of one lesson, by the lesson's id in the collection, easiest first. */
export const exercisesOf = async (lesson: string): Promise<readonly Exercise[]> =>
  (await getCollection('exercises', ({ id }) => id.startsWith(`lessons/${lesson}/`))).toSorted(
    (a, b) => a.data.difficulty - b.data.difficulty || a.id.localeCompare(b.id, 'en'),
  );

/**
 * Works out an exercise's numbers and sets its texts.
 *
 * Throws: Error naming the file and what its formula, given or placeholder lacks.
 */
export const prepare = async ({ data, filePath }: Exercise): Promise<Prepared> => {
  const where = filePath ?? data.id;
  try {
    const numbers = new Map<string, string>();
    const given = [...Object.entries(data.given), ...(await unknowns(data))];
    for (const [name, one] of Object.entries(data.also)) {
      numbers.set(
        name,
        await computedText({
          formula: one.formula,
          given: Object.entries(one.given),
          result: one.result,
        }),
      );
    }
    const fill = async (text: string): Promise<string> => {
      let filled = text;
      for (const [all, name] of text.matchAll(/\{([a-z][a-z0-9-]*)\}/g)) {
        if (name === undefined || isTeX(text, all)) continue;
        const number =
          numbers.get(name) ?? (await computedText({ formula: data.formula, given, result: name }));
        filled = filled.replaceAll(all, number);
      }
      return filled;
    };
    return {
      id: data.id,
      question: await markdown(await fill(data.question)),
      explain: await markdown(await fill(data.explain)),
      answer:
        data.ask === undefined || data.kind === 'choice'
          ? undefined
          : await computedText({ formula: data.formula, given, result: data.ask }),
      choices:
        data.kind === 'choice'
          ? await Promise.all(
              data.choices.map(async ({ text, right, feedback }) => ({
                text: await inlineMarkdown(await fill(text)),
                right: right === true,
                feedback: await inlineMarkdown(await fill(feedback)),
              })),
            )
          : [],
    };
  } catch (cause) {
    throw new Error(`${where}: ${cause instanceof Error ? cause.message : String(cause)}`, {
      cause,
    });
  }
};

/** An exercise that asks for an input says so the way `evaluate` does: name=?. */
const unknowns = async ({
  formula,
  ask,
}: Exercise['data']): Promise<readonly [string, string][]> => {
  const record = (await formulas[formula]?.())?.default;
  const asksInput = Object.values(record?.inputs ?? {}).some((input) => idOf(input) === ask);
  return asksInput && ask !== undefined ? [[ask, '?']] : [];
};

/** True for the braces of a TeX command, such as \frac{a}{b}: a placeholder never follows a command or a brace. */
const isTeX = (text: string, placeholder: string): boolean => {
  const at = text.indexOf(placeholder);
  return /(?:\\[A-Za-z]+|\}|[_^])$/.test(text.slice(0, at));
};
