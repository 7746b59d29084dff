import rehypeKatex from 'rehype-katex';
import remarkMath from 'remark-math';
import { baseLinks } from './base-links.ts';
import { guardMaths } from './guard-maths.ts';
import { tidyMaths } from './tidy-maths.ts';

/** What Markdown and MDX understand beyond the ordinary: mathematics between dollar signs. */
export const remarkPlugins = [remarkMath];

/**
 * From Markdown to HTML: maths as MathML without styles, broken maths as a failed build, links
 * under the site's base.
 */
export const rehypePlugins = (
  base: string,
): [
  [typeof rehypeKatex, { output: 'mathml'; strict: 'error' }],
  typeof guardMaths,
  typeof tidyMaths,
  [typeof baseLinks, { base: string }],
] => [
  [rehypeKatex, { output: 'mathml', strict: 'error' }],
  guardMaths,
  tidyMaths,
  [baseLinks, { base }],
];
