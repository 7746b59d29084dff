import type { VFile } from 'vfile';

/**
 * Fails the build on TeX that KaTeX cannot set. rehype-katex only leaves a message and prints the
 * source in red, which nobody sees until a reader does.
 */
export const guardMaths = () => (_tree: unknown, file: VFile) => {
  const broken = file.messages.find((message) => message.source === 'rehype-katex');
  if (!broken) return;
  const cause = broken.cause instanceof Error ? broken.cause.message : broken.reason;
  throw new Error(
    `Broken TeX in ${file.path ?? 'a Markdown text'}, line ${String(broken.line ?? '?')}: ${cause}. ` +
      'Allowed is what KaTeX supports in strict mode: https://katex.org/docs/supported.html',
  );
};
