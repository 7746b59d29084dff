import { XMLParser, XMLValidator } from 'fast-xml-parser';

/** An element with its children in order; text is an element named #text. */
export interface Node {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Node[];
  readonly text: string;
}

type Raw = Readonly<Record<string, unknown>>;

const nodeOf = (raw: Raw): Node => {
  const name = Object.keys(raw).find((key) => key !== ':@') ?? '';
  const attributes = (raw[':@'] ?? {}) as Record<string, string>;
  const inner = raw[name];
  if (!Array.isArray(inner)) return { name, attributes, children: [], text: String(inner) };
  const children = (inner as Raw[]).map(nodeOf);
  return { name, attributes, children, text: children.map(({ text }) => text).join('') };
};

const parser = new XMLParser({
  preserveOrder: true,
  ignoreAttributes: false,
  attributeNamePrefix: '',
  parseTagValue: false,
  trimValues: false,
  processEntities: { enabled: true, maxTotalExpansions: 1e6, maxExpandedLength: 1e7 },
});

/** Reads XML with a library that knows nothing of ours; what is not well formed throws. */
export const readXml = (text: string): Node => {
  // eslint-disable-next-line @typescript-eslint/no-deprecated -- its successor is one more package that does the same
  const valid = XMLValidator.validate(text);
  if (valid !== true) throw new Error(`${valid.err.line}: ${valid.err.msg}`);
  const [root] = (parser.parse(text) as Raw[])
    .map(nodeOf)
    .filter(({ name }) => !name.startsWith('?') && name !== '#text');
  if (!root) throw new Error('There is no element.');
  return root;
};

export const all = (node: Node, name: string): readonly Node[] =>
  node.children.flatMap((child) => [...(child.name === name ? [child] : []), ...all(child, name)]);

export const child = (node: Node, name: string): Node => {
  const found = node.children.find((one) => one.name === name);
  if (!found) throw new Error(`<${node.name}> has no <${name}>.`);
  return found;
};

export const elements = (node: Node): readonly Node[] =>
  node.children.filter(({ name }) => name !== '#text');
