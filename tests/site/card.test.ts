import { parse } from 'parse5';
import { describe, expect, it } from 'vitest';
import { addressOf, look, markupOf, pages } from '../support/site.ts';

const card = pages.find(({ path }) => path === 'tables/card/');
if (!card) throw new Error('There is no pocket card.');

/** Pages of a PDF, as its own tree counts them. */
const pagesIn = (pdf: Buffer): number =>
  pdf.toString('latin1').match(/\/Type ?\/Page\b/g)?.length ?? 0;

const queries = [
  '',
  '?left=grid-spots&right=gels&back=backdrop-in-view&format=17.3x13&units=imperial',
];

describe('the pocket card', () => {
  it.each(queries)('prints on one sheet, A4 and Letter alike: %s', async (query) => {
    await look(addressOf(card, query), {}, async (page) => {
      await page.emulateMedia({ media: 'print' });
      for (const format of ['A4', 'Letter'] as const)
        expect(pagesIn(await page.pdf({ format })), format).toBe(1);
    });
  });

  it.each(queries)(
    'keeps each face in its quarter of the sheet, nothing cut off: %s',
    async (query) => {
      // A4 at 96 dots to the inch.
      const viewport = { width: 794, height: 1123 };
      await look(addressOf(card, query), { viewport }, async (page) => {
        await page.emulateMedia({ media: 'print' });
        const faces = await page.locator('.card-face:visible').evaluateAll((all) =>
          all.map((face) => {
            const { left, top, right, bottom } = face.getBoundingClientRect();
            const inner = [...face.querySelectorAll('caption, td, th, p, li, dd')]
              .map((part) => part.getBoundingClientRect())
              .filter(({ width }) => width > 0);
            return {
              box: [left, top, right, bottom].map(Math.round),
              out: inner.filter(
                (one) =>
                  one.left < left + 8 ||
                  one.right > right - 8 ||
                  one.top < top + 8 ||
                  one.bottom > bottom - 8,
              ).length,
              parts: inner.length,
            };
          }),
        );
        expect(faces).toHaveLength(4);
        expect(faces.map(({ out }) => out)).toEqual([0, 0, 0, 0]);
        for (const { parts } of faces) expect(parts).toBeGreaterThan(5);
        // Four quarters: two left edges and two top edges.
        expect(new Set(faces.map(({ box }) => box[0])).size).toBe(2);
        expect(new Set(faces.map(({ box }) => box[1])).size).toBe(2);
        expect(Math.max(...faces.map(({ box }) => box[3] ?? 0))).toBeLessThanOrEqual(
          viewport.height,
        );
      });
    },
  );

  it('stands on its head inside the fold, and upright outside', async () => {
    await look(addressOf(card), {}, async (page) => {
      await page.emulateMedia({ media: 'print' });
      const turned = await page
        .locator('.card-face:visible')
        .evaluateAll((all) =>
          all.map((face) => [face.getBoundingClientRect().top, getComputedStyle(face).rotate]),
        );
      const middle = Math.max(...turned.map(([top]) => Number(top)));
      for (const [top, rotate] of turned)
        expect(rotate).toBe(Number(top) < middle ? '180deg' : 'none');
      await page.emulateMedia({ media: 'screen' });
      const upright = await page
        .locator('.card-face:visible')
        .evaluateAll((all) => all.map((face) => getComputedStyle(face).rotate));
      expect(upright).toEqual(['none', 'none', 'none', 'none']);
    });
  });

  it('carries its constants and the date', () => {
    const text = JSON.stringify(parse(markupOf(card)), (key, value: unknown) =>
      key === 'parentNode' ? undefined : value,
    );
    for (const part of [
      'diagonal over 1500',
      'K 12.5, C 250',
      'front principal plane',
      'f/5.6 is 5.6',
    ])
      expect(text).toContain(part);
    expect(text).toMatch(/Worked out .*\d{4}/);
  });

  it('takes its choices from the address, keeps them there, and says what it cannot use', async () => {
    await look(
      addressOf(card, '?left=gels&units=imperial&right=<script>&back=gels&back=falloff'),
      {},
      async (page) => {
        expect(await page.locator('#face-gels').isVisible()).toBe(true);
        expect(await page.locator('#units-imperial').isChecked()).toBe(true);
        expect(await page.locator('[data-card-said]').textContent()).toContain(
          'right, back could not be used',
        );
        await page.locator('summary', { hasText: 'Back' }).click();
        await page.locator('#back-grid-spots').check();
        expect(page.url()).toContain('back=grid-spots');
        expect(await page.locator('#face-grid-spots').isVisible()).toBe(true);
      },
    );
  });

  it('works without script', async () => {
    await look(addressOf(card), { javaScriptEnabled: false }, async (page) => {
      await page.locator('summary', { hasText: 'Inside left' }).click();
      await page.locator('#left-grid-spots').check();
      expect(await page.locator('#face-grid-spots').isVisible()).toBe(true);
      expect(await page.locator('#face-framing-distance').isVisible()).toBe(false);
    });
  });
});
