/** The words of Markdown or MDX, without what sets them: components, maths, links, marks. */
export const proseOf = (body: string): string =>
  body
    .replace(/^import .*$/gm, '')
    .replace(/<!--[\s\S]*?-->|\{\/\*[\s\S]*?\*\/\}/g, ' ')
    .replace(/\$\$[\s\S]*?\$\$|\$[^$\n]+\$/g, ' ')
    .replace(/<Computed[\s\S]*?\/>/g, '…')
    .replace(/<\/?[A-Za-z](?:[^<>"'{}]|"[^"]*"|'[^']*'|\{[^{}]*(?:\{[^{}]*\}[^{}]*)*\})*>/g, ' ')
    .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replace(/^\s*(?:[-*>]|\d+\.|#+)\s+/gm, '')
    .replace(/[*_`]{1,3}(?=\S)|(?<=\S)[*_`]{1,3}/g, '')
    .replace(/\s+/g, ' ')
    .replace(/\s+([.,;:)])/g, '$1')
    .trim();

/** The parts of a text, each from its second-level heading to the next. */
export const sectionsOf = (
  body: string,
): { readonly heading: string; readonly text: string; readonly part: string }[] =>
  body
    .split(/^## /m)
    .slice(1)
    .map((part) => {
      const [heading = '', ...lines] = part.split('\n');
      return { heading: proseOf(heading), text: proseOf(lines.join('\n')), part };
    });
