import remarkMath from 'remark-math';
import { baseLinks } from './base-links.ts';
import { fineType } from './fine-type.ts';
import { setMaths } from './set-maths.ts';
import { termsTogether } from './terms-together.ts';

/** What Markdown and MDX understand beyond the ordinary: mathematics between dollar signs. */
export const remarkPlugins = [remarkMath];

/** From Markdown to HTML: maths as MathML, numbers set as in print, links under the site's base. */
export const rehypePlugins = (
  base: string,
): [
  typeof setMaths,
  typeof fineType,
  typeof termsTogether,
  [typeof baseLinks, { base: string }],
] => [setMaths, fineType, termsTogether, [baseLinks, { base }]];
