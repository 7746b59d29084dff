import type { Element, Root } from 'hast';
import { fromHtmlIsomorphic } from 'hast-util-from-html-isomorphic';
import { toText } from 'hast-util-to-text';
import { SKIP, visitParents } from 'unist-util-visit-parents';
import type { VFile } from 'vfile';
import { maths } from './maths.ts';

/**
 * Sets the mathematics remark-math found in a Markdown text, by the same function as everything else.
 *
 * Throws: Error with file and line where the TeX is broken, so that the build fails before a reader sees it.
 */
export const setMaths = () => (tree: Root, file: VFile) => {
  visitParents(tree, 'element', (element, parents) => {
    const display = hasClass(element, 'math-display');
    if (!display && !hasClass(element, 'math-inline')) return undefined;
    const above = parents.at(-1);
    // Display maths comes as <pre><code>: the whole of it gives way.
    const whole = above?.type === 'element' && above.tagName === 'pre' ? above : element;
    const parent = whole === element ? above : parents.at(-2);
    if (!parent) return undefined;
    try {
      const set = fromHtmlIsomorphic(maths(toText(element, { whitespace: 'pre' }), { display }), {
        fragment: true,
      });
      parent.children.splice(parent.children.indexOf(whole), 1, ...(set.children as Element[]));
    } catch (cause) {
      const line = element.position?.start.line ?? whole.position?.start.line;
      const said = cause instanceof Error ? cause.message : String(cause);
      throw new Error(
        `${file.path || 'Markdown'}, line ${String(line ?? '?')}: ${said}. ` +
          'Allowed is what KaTeX takes in strict mode: https://katex.org/docs/supported.html',
        { cause },
      );
    }
    return SKIP;
  });
};

const hasClass = (element: Element, name: string): boolean => {
  const names = element.properties.className;
  return Array.isArray(names) && names.includes(name);
};
