import { InputError } from '../../formula/errors.ts';
import { evaluateText } from '../../formula/evaluate.ts';
import type { Evaluation } from '../../formula/evaluate.ts';
import type { Style } from '../../formula/show.ts';
import { formulas } from '../../formulas.ts';

/**
 * Works a formula from the words of a command line.
 * Throws: InputError for whatever the person at the keyboard can put right.
 * Example: await evaluateWords(['angle-of-view', 'format=36x24', 'focal-length=100mm'])
 */
export async function evaluateWords(words: readonly string[]): Promise<Evaluation> {
  const style = readStyle(words.filter((word) => word.startsWith('--')));
  const [id, ...rest] = words.filter((word) => !word.startsWith('--'));
  const known = `The formulas are ${Object.keys(formulas).join(', ')}.`;
  if (id === undefined) {
    throw new InputError(`Write a formula and its inputs: FORMULA name=value ... ${known}`);
  }
  const load = Object.hasOwn(formulas, id) ? formulas[id] : undefined;
  if (load === undefined) throw new InputError(`There is no formula “${cut(id)}”. ${known}`);
  const pairs = rest.map((word): [string, string] => {
    const at = word.indexOf('=');
    if (at < 1) throw new InputError(`Expected name=value, found “${cut(word)}”.`);
    return [word.slice(0, at), word.slice(at + 1)];
  });
  return evaluateText((await load()).default, pairs, style);
}

function readStyle(options: readonly string[]): Style {
  const style: { system?: 'metric' | 'imperial'; decimal?: 'point' | 'comma' } = {};
  for (const option of options) {
    if (option === '--system=metric' || option === '--system=imperial') {
      if (style.system !== undefined)
        throw new InputError('--system is given twice. Give it once.');
      style.system = option === '--system=metric' ? 'metric' : 'imperial';
    } else if (option === '--decimal=point' || option === '--decimal=comma') {
      if (style.decimal !== undefined)
        throw new InputError('--decimal is given twice. Give it once.');
      style.decimal = option === '--decimal=point' ? 'point' : 'comma';
    } else {
      throw new InputError(
        `There is no option “${cut(option)}”. The options are --system=metric or imperial, and --decimal=point or comma.`,
      );
    }
  }
  return style;
}

const cut = (word: string): string => word.slice(0, 64);

const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();

if (import.meta.main) {
  try {
    console.log(JSON.stringify(await evaluateWords(process.argv.slice(2))));
  } catch (error) {
    const expected = error instanceof InputError;
    const words = error instanceof Error ? error.message : String(error);
    console.error(oneLine(expected ? words : `This is our fault, please report it: ${words}`));
    process.exitCode = expected ? 2 : 1;
  }
}
