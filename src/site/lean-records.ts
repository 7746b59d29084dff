import { readFile } from 'node:fs/promises';
import { start, startText } from '../optics/harbour.ts';

/** What a record says in words, which stands in the page already: a plate's script needs the numbers only. */
const WORDS = new Set(['tex', 'spoken', 'means', 'symbols', 'model', 'breaks', 'sources', 'slips']);
const LEAN = '?lean';

/** A node of the syntax tree, as far as this file looks at it. */
interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [key: string]: unknown;
}

const isNode = (x: unknown): x is Node =>
  typeof x === 'object' && x !== null && 'type' in x && 'start' in x;

const nodesIn = (node: Node): Node[] =>
  Object.values(node).flatMap((value: unknown) =>
    Array.isArray(value) ? value.filter(isNode) : isNode(value) ? [value] : [],
  );

const nameOf = (key: unknown): string =>
  isNode(key) && typeof key['name'] === 'string' ? key['name'] : '';

/** The text that stands for `start('focal-length')` once the harbour set has been asked. */
const settled = (node: Node): string | undefined => {
  const [id] = (node['arguments'] as readonly Node[] | undefined) ?? [];
  const value = id?.['value'];
  if (node.type !== 'CallExpression' || typeof value !== 'string') return undefined;
  const callee = nameOf(node['callee']);
  if (callee === 'start') return String(start(value));
  return callee === 'startText' ? JSON.stringify(startText(value)) : undefined;
};

/**
 * A record's module without its words, and with its start values written in.
 *
 * Model: cuts properties by name wherever they hold plain data; functions stay, whatever they are called.
 * @param parse a parser of JavaScript to the usual syntax tree
 */
export const lean = (code: string, parse: (code: string) => unknown): string => {
  const edits: { from: number; to: number; text: string }[] = [];
  const walk = (node: Node): void => {
    const text = settled(node);
    if (text !== undefined) edits.push({ from: node.start, to: node.end, text });
    else if (
      node.type === 'Property' &&
      WORDS.has(nameOf(node['key'])) &&
      isNode(node['value']) &&
      plain(node['value'])
    ) {
      const comma = /^\s*,/.exec(code.slice(node.end))?.[0] ?? '';
      edits.push({ from: node.start, to: node.end + comma.length, text: '' });
    } else nodesIn(node).forEach(walk);
  };
  const tree = parse(code);
  if (isNode(tree)) walk(tree);
  return edits
    .toReversed()
    .reduce((now, { from, to, text }) => now.slice(0, from) + text + now.slice(to), code);
};

const plain = ({ type }: Node): boolean =>
  [
    'Literal',
    'TemplateLiteral',
    'TaggedTemplateExpression',
    'ArrayExpression',
    'ObjectExpression',
  ].includes(type);

interface Context {
  readonly environment: { readonly name: string };
  resolve(
    source: string,
    importer: string,
    options: { skipSelf: true },
  ): Promise<{ readonly id: string } | null>;
  parse(code: string): unknown;
}

/**
 * Sends plates the lean form of the records they compute with. Only what calculators and drawings import is changed, and
 * only in what is sent to the reader; a kit is no record, and comes in one form; whoever loads a formula through
 * src/formulas.ts gets all of it.
 */
export const leanRecords = () => ({
  name: 'lean-records',
  enforce: 'pre' as const,
  async resolveId(this: Context, source: string, importer: string | undefined) {
    if (
      this.environment.name !== 'client' ||
      !importer ||
      !/\/src\/(?:widgets|drawing)\/|\?lean$/.test(importer)
    )
      return null;
    const found = await this.resolve(source, importer.replace(LEAN, ''), { skipSelf: true });
    return found &&
      /\/src\/(?:optics|sitting)\/(?!kit\.ts$)[^?]*\.ts$|\/shared\/tables\/[^?]*\.json$/.test(
        found.id,
      )
      ? found.id + LEAN
      : null;
  },
  async load(this: Context, id: string) {
    if (!id.endsWith(`.json${LEAN}`)) return null;
    // Where a row comes from is said on the page.
    const table: unknown = JSON.parse(await readFile(id.replace(LEAN, ''), 'utf8'));
    const rows = JSON.stringify(table, (key, value: unknown) =>
      key === 'source' || key === 'note' ? undefined : value,
    );
    return { code: `export default ${rows}`, moduleType: 'js' };
  },
  transform: {
    order: 'post' as const,
    handler(this: Context, code: string, id: string) {
      return id.endsWith(`.ts${LEAN}`)
        ? { code: lean(code, (text) => this.parse(text)), map: null }
        : null;
    },
  },
});
