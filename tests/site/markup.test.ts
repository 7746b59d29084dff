import { formulas } from '../../src/formulas.ts';
import { HtmlValidate } from 'html-validate';
import { parse } from 'parse5';
import { describe, expect, it } from 'vitest';
import { attribute, elementsIn, elementsOf, visibleText } from '../support/markup.ts';
import { lessons, markupOf, pages, plates, titled } from '../support/site.ts';

const validator = new HtmlValidate({
  extends: ['html-validate:recommended'],
  elements: [
    'html5',
    // What Astro wraps round whatever comes alive.
    {
      'astro-island': { flow: true, phrasing: true, permittedContent: ['@flow'] },
      'astro-slot': { flow: true, phrasing: true, permittedContent: ['@flow'] },
    },
  ],
});

/** All that is let pass: what the tools print whatever we write. */
const excuses: readonly { rule: string; message: RegExp; why: string }[] = [
  {
    rule: 'void-style',
    message: /^Expected omitted end tag <input> instead of self-closing element <input\/>/,
    why: 'Svelte prints <input/>.',
  },
  {
    rule: 'attribute-boolean-style',
    message: /^Attribute "(selected|checked)" should omit value/,
    why: 'Svelte writes selected="selected" or selected="".',
  },
  {
    rule: 'attribute-empty-style',
    message: /^Attribute "hidden" should omit value/,
    why: 'Svelte writes hidden="".',
  },
  {
    rule: 'no-trailing-whitespace',
    message: /^Trailing whitespace/,
    why: 'The Markdown and page compilers leave it where a part ends.',
  },
];

const found = pages.map((page) => ({
  page,
  messages: validator
    .validateStringSync(markupOf(page))
    .results.flatMap((result) => result.messages),
}));

const excusedBy = (message: {
  ruleId: string;
  message: string;
}): (typeof excuses)[number] | undefined =>
  excuses.find(
    ({ rule, message: words }) => rule === message.ruleId && words.test(message.message),
  );

describe.each(found.map((one) => [`/${one.page.path}`, one] as const))(
  '%s',
  (_, { page, messages }) => {
    it('is valid HTML but for the named excuses', () => {
      const faults = messages
        .filter((message) => excusedBy(message) === undefined)
        .map(
          ({ ruleId, message, line, selector }) =>
            `${ruleId}: ${message} (line ${line}, ${selector ?? ''})`,
        );
      expect(faults).toEqual([]);
    });

    it('shows every formula typeset and no raw TeX', () => {
      const html = markupOf(page);
      expect(html).not.toMatch(/katex-error|<merror/);
      const text = visibleText(parse(html));
      expect(text).not.toMatch(/\\[a-zA-Z]{2,}|\$[^$\n]{1,80}\$|\\\(/);
      expect(text, 'a value that is none').not.toMatch(/\bNaN\b|\bundefined\b|\[object /);
      const shows = Object.keys(formulas).some((id) => html.includes(`data-plate="${id}"`));
      if (shows || plates.includes(page)) expect(html).toMatch(/<math[\s>]/);
    });
  },
);

it.each(excuses)('still needs its excuse: $rule, $why', (excuse) => {
  const used = found.flatMap(({ messages }) =>
    messages.filter((message) => excusedBy(message) === excuse),
  );
  expect(used).not.toHaveLength(0);
});

describe.each(titled([...lessons, ...plates]))('%s', (_, page) => {
  it('has the words of each plate’s formula for those who listen', () => {
    const elements = elementsOf(markupOf(page));
    const plates = elements.filter((element) => attribute(element, 'data-plate') !== undefined);
    for (const plate of plates) {
      const displayed = elementsIn(plate).filter(
        (element) => element.tagName === 'math' && attribute(element, 'display') === 'block',
      );
      expect(displayed.length).toBeGreaterThan(0);
      for (const math of displayed) {
        expect(attribute(math, 'aria-label'), visibleText(math)).toMatch(/[a-z]{2,} [a-z]/);
      }
    }
  });
});
