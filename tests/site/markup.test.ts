import { HtmlValidate } from 'html-validate';
import { parse } from 'parse5';
import { describe, expect, it } from 'vitest';
import { attribute, elementsOf, visibleText } from '../support/markup.ts';
import { lessons, markupOf, pages, plates, titled } from '../support/site.ts';

const validator = new HtmlValidate({
  extends: ['html-validate:recommended'],
  elements: [
    'html5',
    // What Astro wraps round whatever comes alive.
    {
      'astro-island': { flow: true, phrasing: true, permittedContent: ['@flow'] },
      'astro-slot': { flow: true, phrasing: true },
    },
  ],
  rules: {
    // A heading may be long; search engines are not who it is for.
    'long-title': 'off',
    // Typed as <br/> and <input/> by the tools, which browsers read alike.
    'void-style': 'off',
    // Astro writes boolean attributes as it likes.
    'attribute-boolean-style': 'off',
    'attribute-empty-style': 'off',
    // Spaces between attributes and at line ends are the compiler's.
    'no-trailing-whitespace': 'off',
    'attr-quotes': 'off',
    'doctype-style': 'off',
  },
});

describe.each(titled(pages))('%s', (address, page) => {
  it('is valid HTML', async () => {
    const { results } = await validator.validateString(markupOf(page));
    const messages = results.flatMap((result) =>
      result.messages.map(({ ruleId, message, line, selector }) =>
        [ruleId, message, `line ${line}`, selector].join(' | '),
      ),
    );
    expect(messages.slice(0, 12)).toEqual([]);
  });

  it('shows every formula typeset and no raw TeX', () => {
    const html = markupOf(page);
    expect(html).not.toMatch(/katex-error|<merror/);
    const text = visibleText(parse(html));
    expect(text).not.toMatch(/\\[a-zA-Z]{2,}|\$[^$\n]{1,80}\$|\\\(/);
    expect(text, 'a value that is none').not.toMatch(/\bNaN\b|\bundefined\b|\[object /);
    if (/^\/(focal-length|plates)\/./.test(address)) expect(html).toMatch(/<math[\s>]/);
  });
});

describe.each(titled([...lessons, ...plates]))('%s', (_, page) => {
  it('has spoken words for each displayed formula', () => {
    const displayed = elementsOf(markupOf(page)).filter(
      (element) => element.tagName === 'math' && attribute(element, 'display') === 'block',
    );
    expect(displayed.length).toBeGreaterThan(0);
    for (const math of displayed) {
      const words = [
        math,
        math.parentNode,
        math.parentNode && 'parentNode' in math.parentNode ? math.parentNode.parentNode : null,
      ]
        .map((node) =>
          node && 'attrs' in node
            ? (attribute(node, 'aria-label') ?? attribute(node, 'alttext'))
            : undefined,
        )
        .find((label) => label !== undefined && label !== '');
      expect(words, visibleText(math).slice(0, 60)).toMatch(/[a-z]{2,} [a-z]/);
    }
  });
});
