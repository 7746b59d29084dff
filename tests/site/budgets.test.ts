import { formulas } from '../../src/formulas.ts';
import { beforeAll, describe, expect, it } from 'vitest';
import { curriculum, lessons, markupOf, pages, plates, pool, titled } from '../support/site.ts';
import { visit } from '../support/visit.ts';
import type { Visit } from '../support/visit.ts';
import budgets from './budgets.json' with { type: 'json' };

const visits = new Map<string, Visit | Error>();

beforeAll(async () => {
  // Most of a visit is waiting, so several fit side by side on one core.
  await pool(pages, 6, async (page) => {
    visits.set(page.path, await visit(page).catch((error: unknown) => error as Error));
  });
}, 900_000);

const visitTo = (path: string): Visit => {
  const found = visits.get(path);
  if (found === undefined) throw new Error(`/${path} was not visited.`);
  if (found instanceof Error) throw found;
  return found;
};

it('looks at a whole site', () => {
  expect(lessons.map(({ path }) => path)).toEqual(curriculum.toSorted());
  expect(plates).toHaveLength(Object.keys(formulas).length);
  expect(lessons.filter((page) => markupOf(page).includes('data-plate='))).not.toHaveLength(0);
});

describe.each(titled(pages))('%s', (address, { path }) => {
  const line = budgets.pages.find((one) => new RegExp(one.address).test(address));

  it('has a budget and keeps to it', () => {
    if (line === undefined) throw new Error(`budgets.json has no line for ${address}.`);
    const { script, html, css, fonts } = visitTo(path);
    const over = Object.entries({ script, html, css, fonts }).flatMap(([kind, size]) => {
      const limit = { ...budgets.everywhere, script: line.script, html: line.html }[kind] ?? 0;
      return size > limit ? [`${kind} ${size.toFixed(1)} kB, budget ${limit} kB`] : [];
    });
    expect(over).toEqual([]);
    expect(html, 'what was counted').toBeGreaterThan(0.5);
  });

  it('fetches nothing from strangers and nothing in vain', () => {
    const { strangers, failures } = visitTo(path);
    expect(strangers).toEqual([]);
    expect(failures).toEqual([]);
  });

  it('breaks no rule of its own security policy', () => {
    expect(visitTo(path).violations).toEqual([]);
  });

  it('says nothing on the console', () => {
    expect(visitTo(path).messages).toEqual([]);
  });

  it('moves nothing by itself when calculators come alive, and next to nothing as fonts come in', () => {
    const { shiftWhileLoading, shiftLater, shifted } = visitTo(path);
    expect(shiftLater, shifted.join('; ')).toBeLessThan(0.0001);
    expect(shiftWhileLoading).toBeLessThan(0.05);
  });
});

it('waits for one sheet of styles before a page shows a word', () => {
  for (const page of pages) {
    const sheets = [...markupOf(page).matchAll(/<link rel="stylesheet" href="([^"]*)"/g)].map(
      ([, sheet = '']) => sheet.replace(/^.*\/_astro\/style\.[^/]*\.css$/, 'style'),
    );
    // The folded card's choices have rules of their own, made from its tables.
    const own = page.path === 'tables/card/' ? 2 : 1;
    expect(sheets, page.path).toHaveLength(own);
    expect(sheets[0], page.path).toBe('style');
    if (own === 2) expect(sheets[1]).toMatch(/card-faces\.css$/);
  }
});

it('puts a security policy on every page that lets in only its own', () => {
  for (const page of pages) {
    const [, policy = ''] =
      /<meta http-equiv="content-security-policy" content="([^"]*)"/i.exec(markupOf(page)) ?? [];
    expect(policy, page.path).toMatch(/default-src 'none'/);
    expect(policy, page.path).toMatch(/script-src 'self' 'sha256-|script-src 'self'/);
    expect(policy, page.path).not.toMatch(/script-src[^;]*'unsafe-/);
    expect(policy, page.path).not.toMatch(/style-src(?:-elem)? [^;]*'unsafe-inline'/);
    expect(policy, page.path).not.toMatch(/https?:/);
  }
});
