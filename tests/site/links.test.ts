import { describe, expect, it } from 'vitest';
import { readLessons } from '../support/content.ts';
import { brokenLinks, repeatedIds } from '../support/links.ts';
import { attribute, elementsOf } from '../support/markup.ts';
import { curriculum, markupOf, pages, titled } from '../support/site.ts';

it('has no link, anchor, picture or part that leads nowhere', () => {
  const { broken, checked } = brokenLinks('dist', '/');
  expect(broken).toEqual([]);
  expect(checked).toBeGreaterThan(300);
});

describe.each(titled(pages))('%s', (_, page) => {
  it('uses each id once', () => {
    expect(repeatedIds(markupOf(page))).toEqual([]);
  });

  it('has one heading of the first level, a title and a description', () => {
    const elements = elementsOf(markupOf(page));
    expect(elements.filter(({ tagName }) => tagName === 'h1')).toHaveLength(1);
    expect(elements.filter(({ tagName }) => tagName === 'title')).not.toHaveLength(0);
    const html = elements.find(({ tagName }) => tagName === 'html');
    expect(html && attribute(html, 'lang')).toBe('en-GB');
  });
});

it('leads from the home page through every lesson, each with the next one named', () => {
  const linksOf = (path: string): string[] => {
    const page = pages.find((one) => one.path === path);
    if (page === undefined) throw new Error(`There is no page /${path}.`);
    return elementsOf(markupOf(page)).flatMap((element) =>
      element.tagName === 'a' ? (attribute(element, 'href') ?? []) : [],
    );
  };
  const units = [...new Set(readLessons().map(({ unit }) => unit))];
  expect(units.length).toBeGreaterThan(1);
  for (const unit of units) {
    expect(linksOf('')).toContain(`/${unit}/`);
    const inOrder = curriculum
      .filter((path) => path.startsWith(`${unit}/`))
      .map((path) => `/${path}`);
    const listed = linksOf(`${unit}/`).filter((href) => inOrder.includes(href));
    expect([...new Set(listed)]).toEqual(inOrder);
    inOrder.slice(1).forEach((next, index) => {
      expect(linksOf(inOrder[index]?.slice(1) ?? '')).toContain(next);
    });
  }
});

it('can reach every page from the home page', () => {
  const reached = new Set<string>();
  const queue = ['/'];
  for (let path = queue.pop(); path !== undefined; path = queue.pop()) {
    if (reached.has(path)) continue;
    reached.add(path);
    const page = pages.find((one) => `/${one.path}` === path);
    if (page === undefined) continue;
    for (const element of elementsOf(markupOf(page))) {
      const href = element.tagName === 'a' ? attribute(element, 'href') : undefined;
      if (href !== undefined) queue.push(new URL(href, `http://site.invalid${path}`).pathname);
    }
  }
  expect(pages.map(({ path }) => `/${path}`).filter((path) => !reached.has(path))).toEqual([
    '/404.html',
  ]);
});
