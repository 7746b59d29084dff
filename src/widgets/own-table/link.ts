import { idOf, type Formula, type Value } from '../../formula/record.ts';
import { onlyInPlay } from '../../formula/in-play.ts';
import { rivalsOf, startsOf } from '../../formula/starts.ts';
import { writeQuery } from '../../formula/query.ts';
import { readQuery } from '../parts/read-link.ts';
import { canRun, readSeries, textsOfLink, valuesOf, type Series } from './axis.ts';
import { writeInput } from '../../formula/read.ts';

/** Stands for the side across where several results do. */
export const RESULTS = 'results';

/** Longer than any link of ours that a reader would type the values of. */
const LONGEST = 6000;

/** A side as a link names it. */
export interface Run {
  readonly key: string;
  readonly series: Series;
}

/** What a link was read to. */
export interface Link {
  readonly down: Run;
  readonly across: Run | undefined;
  readonly show: readonly string[];
  /** What is fixed, by record key. */
  readonly values: Readonly<Record<string, Value>>;
  readonly notices: readonly string[];
}

const quote = (text: string): string => `“${text.slice(0, 40)}${text.length > 40 ? '…' : ''}”`;

/** Which formula a link speaks of; undefined where it names none, or more than one. */
export const formulaOf = (query: string): string | undefined => {
  const [id, ...more] = query.length > LONGEST ? [] : new URLSearchParams(query).getAll('formula');
  return more.length > 0 ? undefined : id;
};

/**
 * Reads a table from an address, whoever wrote it.
 *
 * Model: `formula`, `down`, `across` and `show` hold ids, and every input's own id its canonical text: one value, or for
 * those that run a series, `1m..4m..0.2m` or `f/2;f/4`. What cannot be used gives way to what the formula's table shows
 * first, and is named in a notice.
 * @param start the formula's own first table, as a link's text
 */
export const readOwn = (formula: Formula, start: string, query: string): Link => {
  const first = read(formula, new URLSearchParams(start), undefined);
  if (!first) throw new Error(`${formula.id} has no table to begin with: ${start}`);
  // A formula alone asks for nothing else.
  if ([...new URLSearchParams(query).keys()].every((name) => name === 'formula'))
    return { ...first, values: startsOf(formula) };
  if (query.length > LONGEST)
    return {
      ...first,
      values: startsOf(formula),
      notices: ['The link is too long to be one of these; the table shows its start.'],
    };
  return read(formula, new URLSearchParams(query), first) ?? first;
};

/** @param fallback undefined while the first table itself is read */
const read = (
  formula: Formula,
  query: URLSearchParams,
  fallback: Link | undefined,
): Link | undefined => {
  const notices: string[] = [];
  const inputs = Object.entries(formula.inputs);
  const keyOf = (id: string): string | undefined =>
    inputs.find(([, input]) => idOf(input) === id && canRun(input))?.[0];
  const once = (name: string): string => {
    const [text = '', ...more] = query.getAll(name);
    if (more.length === 0) return text;
    notices.push(`The link gives ${name} ${more.length + 1} times; the first table’s stands there instead.`); // prettier-ignore
    return '';
  };
  const run = (name: 'down' | 'across'): Run | undefined => {
    const id = once(name);
    const before = fallback?.[name];
    if (id === '') return before;
    const key = keyOf(id);
    const input = key === undefined ? undefined : formula.inputs[key];
    if (key === undefined || !input) {
      notices.push(`The link lets ${quote(id)} run ${name}, which this table cannot; its start stands there instead.`); // prettier-ignore
      return before;
    }
    const found = readSeries(input, textsOfLink(once(id)), { stored: true });
    const [why] = Object.values(found.troubles);
    if (found.series && !why) return { key, series: found.series };
    notices.push(`The link’s ${input.name} could not be used: ${why?.message.replace('you typed', 'the link says') ?? ''} The start stands there instead.`); // prettier-ignore
    return before;
  };

  const down = run('down');
  const wanted = query.get('across');
  const across = wanted === RESULTS ? undefined : run('across');
  if (!down) return undefined;
  const clash = across?.key === down.key;
  if (clash && fallback) {
    notices.push(`The link lets ${formula.inputs[down.key]?.name ?? ''} run both ways; the table shows its start.`); // prettier-ignore
    return { ...fallback, values: startsOf(formula), notices };
  }

  const outputs = Object.entries(formula.outputs);
  const asked = once('show').split(';').filter(Boolean);
  const show = outputs.filter(([, one]) => asked.includes(idOf(one))).map(([key]) => key);
  const strange = asked.filter((id) => !outputs.some(([, one]) => idOf(one) === id));
  if (strange.length > 0)
    notices.push(`The link shows ${strange.slice(0, 3).map(quote).join(', ')}, which is no result of this formula.`); // prettier-ignore
  const shown = show.length > 0 ? show : (fallback?.show ?? []);
  if (!fallback) return { down, across, show: shown, values: {}, notices };

  // The rest is a plate's own query; for a side one of its values stands in it.
  const rest = new URLSearchParams(query);
  for (const name of ['formula', 'down', 'across', 'show']) rest.delete(name);
  const running = [down, across].map((one) => one && idOf(formula.inputs[one.key] ?? { name: '' }));
  const rivals = running.flatMap((id) => (id ? rivalsOf(formula, id) : []));
  // A link that says only what runs leaves the rest as the table begins.
  if (inputs.every(([, input]) => running.includes(idOf(input)) || !rest.has(idOf(input))))
    for (const [id, text] of new URLSearchParams(writeQuery(formula, startsOf(formula))))
      if (!rivals.includes(id)) rest.append(id, text);
  for (const one of [down, across]) {
    const input = one && formula.inputs[one.key];
    if (!one || !input) continue;
    const [value] = valuesOf(input, one.series);
    rest.delete(idOf(input));
    rest.set(idOf(input), writeInput(input, value));
  }
  const quiet = { ...formula, compute: () => ({}) };
  const loaded = readQuery(quiet, rest.toString());
  return {
    down,
    across,
    show: shown,
    values: loaded?.values ?? onlyInPlay(formula, startsOf(formula)),
    notices: [
      ...notices,
      ...(loaded?.notices ?? []).map((one) => one.replaceAll('plate', 'table')),
    ],
  };
};
