import type { Element, ElementContent, Root } from 'hast';
import { visit } from 'unist-util-visit';

/**
 * Leaves of KaTeX's output only what a browser draws: `<math>`, without the wrapping span and
 * without the TeX source, which is a third of the markup and reaches no reader.
 */
export const tidyMaths = () => (tree: Root) => {
  visit(tree, 'element', (element, index, parent) => {
    if (!parent || index === undefined || !hasClass(element, 'katex')) return;
    const math = element.children.find(isElement('math'));
    const semantics = math?.children.find(isElement('semantics'));
    if (!math || !semantics) return;
    math.children = semantics.children.filter((child) => !isElement('annotation')(child));
    delete math.properties['xmlns'];
    if (math.properties['display'] === 'block') math.properties['tabIndex'] = 0;
    parent.children[index] = math;
  });
};

const hasClass = (element: Element, name: string): boolean => {
  const names = element.properties['className'];
  return Array.isArray(names) && names.includes(name);
};

const isElement =
  (name: string) =>
  (node: ElementContent): node is Element =>
    node.type === 'element' && node.tagName === name;
