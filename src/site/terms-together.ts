import type { ElementContent, Root, RootContent } from 'hast';
import { visit } from 'unist-util-visit';

type Node = RootContent | ElementContent;

/** A term, or a symbol set as maths: both are boxes to the line they stand in. */
const isBox = (node: Node): boolean =>
  (node.type === 'mdxJsxTextElement' && 'name' in node && node.name === 'Term') ||
  (node.type === 'element' && node.tagName === 'math');

/**
 * Keeps a term or a symbol and the mark that follows it on one line. Each is a box of its own to a line of text, and a
 * comma after it could otherwise begin the next line.
 */
export const termsTogether = () => (tree: Root) => {
  visit(tree, 'text', (node, index, parent) => {
    if (!parent || index === undefined || index === 0) return undefined;
    const term = parent.children[index - 1];
    const [mark] = /^[,.;:?!)’”]+/.exec(node.value) ?? [];
    if (!term || !isBox(term) || mark === undefined) return undefined;
    node.value = node.value.slice(mark.length);
    const together: ElementContent = {
      type: 'element',
      tagName: 'span',
      properties: { className: ['together'] },
      children: [term as ElementContent, { type: 'text', value: mark }],
    };
    (parent.children as RootContent[]).splice(index - 1, 1, together);
    return index + 1;
  });
};
