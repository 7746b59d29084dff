import type { ElementContent, Root, RootContent } from 'hast';
import { SKIP, visit } from 'unist-util-visit';

const UNIT = /(\d) (?=(?:mm|cm|m|km|s|ms|in|ft|kg|g|lx|N|W|K|min|h|stops?|%)(?![\p{L}\d]))/gu;
const SIZE = /(\d) × (?=\d)/g;
const SPEED = /\b(ISO) (?=\d)/g;
const APERTURE = /\bf(?=\/\d)/;

/** A number on one line with its unit, a size with both its sides, a film speed with its name. */
export const glued = (text: string): string =>
  text.replace(UNIT, '$1\u00a0').replace(SIZE, '$1\u00a0×\u00a0').replace(SPEED, '$1\u00a0');

/**
 * The small things of setting numbers in prose: a number and its unit stay on one line, so do the
 * two sides of a size, and the f of f/4 is italic.
 */
export const fineType = () => (tree: Root) => {
  visit(tree, (node, index, parent) => {
    if (node.type === 'element' && ['code', 'pre', 'math'].includes(node.tagName)) return SKIP;
    if (node.type !== 'text' || !parent || index === undefined) return undefined;
    const text = glued(node.value);
    if (!APERTURE.test(text)) {
      node.value = text;
      return undefined;
    }
    const pieces = text.split(new RegExp(APERTURE, 'g')).flatMap((piece, i): ElementContent[] => [
      ...(i > 0
        ? [
            {
              type: 'element' as const,
              tagName: 'i',
              properties: {},
              children: [{ type: 'text' as const, value: 'f' }],
            },
          ]
        : []),
      ...(piece === '' ? [] : [{ type: 'text' as const, value: piece }]),
    ]);
    (parent.children as RootContent[]).splice(index, 1, ...pieces);
    return index + pieces.length;
  });
};
