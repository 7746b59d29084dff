import { createMarkdownProcessor } from '@astrojs/markdown-remark';
import { withoutParagraphs } from './paragraphs.ts';
import { rehypePlugins, remarkPlugins } from './markdown-plugins.ts';

const processor = createMarkdownProcessor({
  syntaxHighlight: false,
  remarkPlugins,
  rehypePlugins: rehypePlugins(import.meta.env.BASE_URL),
});

/** Markdown from a data file, as HTML, by the same rules as the lessons. */
export const markdown = async (text: string): Promise<string> =>
  (await (await processor).render(text)).code;

/** The same for text that stands inside a sentence or a list entry: without paragraphs around it. */
export const inlineMarkdown = async (text: string): Promise<string> =>
  withoutParagraphs(await markdown(text));
