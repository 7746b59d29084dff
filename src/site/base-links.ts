import type { Root } from 'hast';
import type { MdxJsxFlowElementHast, MdxJsxTextElementHast } from 'mdast-util-mdx-jsx';
import { visit } from 'unist-util-visit';
import { joinBase } from './join-base.ts';

/**
 * Puts the site's base before every root-relative address in a Markdown text, so that an author
 * writes `/focal-length/` and the page works under `/any/sub-path/` too.
 */
export const baseLinks =
  ({ base }: { base: string }) =>
  (tree: Root) => {
    visit(tree, (node) => {
      if (node.type === 'element') {
        for (const name of ['href', 'src']) {
          const address = node.properties[name];
          if (typeof address === 'string') node.properties[name] = joinBase(base, address);
        }
      }
      if (isPlainJsx(node)) {
        for (const attribute of node.attributes) {
          if (attribute.type !== 'mdxJsxAttribute' || typeof attribute.value !== 'string') continue;
          if (attribute.name === 'href' || attribute.name === 'src') {
            attribute.value = joinBase(base, attribute.value);
          }
        }
      }
    });
  };

/** HTML written out in MDX. Components have capitals and see to their own addresses. */
const isPlainJsx = (node: unknown): node is MdxJsxFlowElementHast | MdxJsxTextElementHast => {
  const { type, name } = node as { type?: string; name?: string | null };
  return (
    (type === 'mdxJsxFlowElement' || type === 'mdxJsxTextElement') &&
    typeof name === 'string' &&
    /^[a-z]/.test(name)
  );
};
