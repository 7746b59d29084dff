import { strFromU8, unzipSync } from 'fflate';
import { numberIn, type CourseItem, type Entered } from './course-item.ts';
import { all, child, elements, readXml, type Node } from './xml.ts';

type Value = number | boolean | readonly string[] | undefined;

const id = (node: Node): string => node.attributes['identifier'] ?? '';

/** What a QTI engine does with the response processing it is given: every element of ours, by the standard’s own words. */
const run = (item: Node, responses: Readonly<Record<string, Value>>): Record<string, Value> => {
  const outcomes: Record<string, Value> = {};
  for (const declared of all(item, 'outcomeDeclaration'))
    if (declared.attributes['baseType'] === 'float') outcomes[id(declared)] = 0;
  const logic = (values: readonly Value[], of: 'every' | 'some'): Value =>
    values[of]((value) => value === true);
  const value = (node: Node): Value => {
    const inner = elements(node);
    const [first, second] = inner;
    switch (node.name) {
      case 'variable':
        return id(node) in responses ? responses[id(node)] : outcomes[id(node)];
      case 'baseValue':
        return node.attributes['baseType'] === 'float' ? Number(node.text) : [node.text];
      case 'and':
        return logic(inner.map(value), 'every');
      case 'or':
        return logic(inner.map(value), 'some');
      case 'not':
        return first ? value(first) !== true : undefined;
      case 'isNull':
        return first ? value(first) === undefined : undefined;
      case 'gte':
      case 'lte': {
        const [a, b] = [first && value(first), second && value(second)];
        if (typeof a !== 'number' || typeof b !== 'number') return undefined;
        return node.name === 'gte' ? a >= b : a <= b;
      }
      case 'sum':
        return inner.map(value).reduce<number>((sum, one) => sum + Number(one), 0);
      case 'mapResponse': {
        const declared = all(item, 'responseDeclaration').find((one) => id(one) === id(node));
        if (!declared) throw new Error(`Nothing declares ${id(node)}.`);
        const { attributes, children } = child(declared, 'mapping');
        const chosen = responses[id(node)];
        const worth = (key: string): number =>
          Number(
            children.find((one) => one.attributes['mapKey'] === key)?.attributes['mappedValue'] ??
              attributes['defaultValue'],
          );
        const sum = Array.isArray(chosen)
          ? (chosen as string[]).reduce((total, key) => total + worth(key), 0)
          : 0;
        return Math.min(
          Number(attributes['upperBound']),
          Math.max(Number(attributes['lowerBound']), sum),
        );
      }
      default:
        throw new Error(`No reader for <${node.name}>.`);
    }
  };
  const rule = (node: Node): void => {
    const inner = elements(node);
    if (node.name === 'setOutcomeValue') {
      const [expression] = inner;
      outcomes[id(node)] = expression && value(expression);
    } else if (node.name === 'responseCondition') {
      const taken = inner.find(({ name, children }) => {
        const [test] = children.filter((one) => one.name !== '#text');
        return name === 'responseElse' || (test !== undefined && value(test) === true);
      });
      if (taken)
        elements(taken)
          .slice(taken.name === 'responseElse' ? 0 : 1)
          .forEach(rule);
    } else throw new Error(`No reader for <${node.name}>.`);
  };
  elements(child(item, 'responseProcessing')).forEach(rule);
  return outcomes;
};

const itemOf = (item: Node): CourseItem => {
  const body = child(item, 'itemBody');
  const [processed] = all(item, 'responseProcessing');
  const fields = all(body, 'textEntryInteraction');
  const lists = all(body, 'choiceInteraction');
  const sayings = all(item, 'modalFeedback').filter(
    ({ attributes }) => attributes['outcomeIdentifier'] !== 'SOLUTION',
  );
  const mark = ({ number, options = [] }: Entered) => {
    if (!processed) return { credit: undefined, say: '' };
    const responses: Record<string, Value> = {};
    for (const field of fields)
      responses[field.attributes['responseIdentifier'] ?? ''] = numberIn(number ?? '');
    for (const field of lists) {
      const chosen = all(field, 'simpleChoice').filter(({ text }) => options.includes(text));
      responses[field.attributes['responseIdentifier'] ?? ''] =
        chosen.length > 0 ? chosen.map(id) : undefined;
    }
    const outcomes = run(item, responses);
    const say = sayings
      .filter((one) => {
        const held = outcomes[one.attributes['outcomeIdentifier'] ?? ''];
        return Array.isArray(held) && held.includes(id(one));
      })
      .map(({ text }) => text)
      .join(' ');
    return { credit: outcomes['SCORE'] as number, say };
  };
  return { title: item.attributes['title'] ?? '', shown: body.text, mark };
};

/** Reads a content package back: its items by their ids without the stem, and every file it holds. */
export const readQti = (
  bytes: Uint8Array,
): {
  readonly files: Readonly<Record<string, string>>;
  readonly items: ReadonlyMap<string, CourseItem>;
} => {
  const files = Object.fromEntries(
    Object.entries(unzipSync(bytes)).map(([path, held]) => [path, strFromU8(held)]),
  );
  const items = all(readXml(files['imsmanifest.xml'] ?? ''), 'resource')
    .filter(({ attributes }) => /^imsqti_item_xmlv2p[12]$/.test(attributes['type'] ?? ''))
    .map((resource) => {
      const item = readXml(files[resource.attributes['href'] ?? ''] ?? '');
      return [id(item).replace(/^item-/, ''), itemOf(item)] as const;
    });
  return { files, items: new Map(items) };
};
