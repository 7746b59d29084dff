import { parse } from 'parse5';
import type { DefaultTreeAdapterMap } from 'parse5';

export type Element = DefaultTreeAdapterMap['element'];
type Node = DefaultTreeAdapterMap['node'];

/** Every element of a page, in document order. */
export const elementsOf = (html: string): Element[] => elementsIn(parse(html));

/** Every element from a node on, itself included, in document order. */
export function elementsIn(top: Node): Element[] {
  const found: Element[] = [];
  const walk = (node: Node): void => {
    if ('tagName' in node) found.push(node);
    if ('childNodes' in node) node.childNodes.forEach(walk);
    if ('content' in node) walk(node.content);
  };
  walk(top);
  return found;
}

export const attribute = (element: Element, name: string): string | undefined =>
  element.attrs.find((one) => one.name === name)?.value;

/** The text a reader can meet: not scripts, styles, or the TeX that formulas carry along for copying. */
export function visibleText(node: Node): string {
  if ('value' in node) return node.value;
  if ('tagName' in node && ['script', 'style', 'annotation', 'template'].includes(node.tagName)) {
    return '';
  }
  return 'childNodes' in node ? node.childNodes.map(visibleText).join('') : '';
}
