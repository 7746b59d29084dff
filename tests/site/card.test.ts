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

  it.each([
    ['A4', { width: 794, height: 1123 }],
    ['Letter', { width: 816, height: 1056 }],
  ] as const)('keeps whatever is chosen inside its quarter of %s', async (_paper, viewport) => {
    await look(addressOf(card), { viewport }, async (page) => {
      await page.emulateMedia({ media: 'print' });
      const faces = await page.evaluate(() => {
        const radios = (name: string): HTMLInputElement[] => [
          ...document.querySelectorAll<HTMLInputElement>(`input[name=${name}]`),
        ];
        const measure = (what: string, face: Element | null) => {
          if (!face) throw new Error(`No face for ${what}.`);
          const { left, top, right, bottom } = face.getBoundingClientRect();
          const inner = [...face.querySelectorAll('caption, td, th, p, li, dt, dd')]
            .map((part) => [part, part.getBoundingClientRect()] as const)
            .filter(([, { width }]) => width > 0);
          const sizes = inner.map(([part]) => parseFloat(getComputedStyle(part).fontSize));
          return {
            what,
            box: [left, top, right, bottom].map(Math.round),
            margin: Math.min(
              ...inner.flatMap(([, one]) => [
                one.left - left,
                one.top - top,
                right - one.right,
                bottom - one.bottom,
              ]),
            ),
            cut: inner.filter(([part]) => part.scrollWidth > part.clientWidth + 1).length,
            grids: [...face.querySelectorAll('table')].filter((one) => one.offsetWidth > 0).length,
            points: Math.min(...sizes) * 0.75,
          };
        };
        const of = (id: string) => measure(id, document.getElementById(`face-${id}`));
        const shown = () => document.querySelectorAll('.card-face.of-table:has(table)');
        const ids = radios('left').map(({ value }) => value);
        const result = [measure('front', document.querySelector('.card-face.front'))];
        for (const format of radios('format'))
          for (const units of radios('units')) {
            format.checked = units.checked = true;
            // Three at a time, one on each face.
            for (let at = 0; at < ids.length; at += 3) {
              for (const [step, face] of ['left', 'right', 'back'].entries()) {
                const radio = radios(face)[(at + step) % ids.length];
                if (radio) radio.checked = true;
              }
              for (const step of [0, 1, 2]) {
                const id = ids[(at + step) % ids.length] ?? '';
                const one = of(id);
                result.push({ ...one, what: `${id} ${format.value} ${units.value}` });
              }
            }
          }
        return { result, tables: ids.length, all: shown().length };
      });
      expect(faces.all).toBe(faces.tables);
      expect(faces.result).toHaveLength(1 + Math.ceil(faces.tables / 3) * 3 * 6);
      const [width, height] = [viewport.width / 2, viewport.height / 2];
      const wrong = faces.result.filter(
        ({ what, box: [left = 0, top = 0, right = 0, bottom = 0], margin, cut, grids, points }) =>
          margin < 8 ||
          cut > 0 ||
          points < 7 ||
          grids !== (what === 'front' ? 0 : 1) ||
          ![0, width].some((x) => Math.abs(left - x) <= 1) ||
          ![0, height].some((y) => Math.abs(top - y) <= 3) ||
          Math.abs(right - left - width) > 1 ||
          Math.abs(bottom - top - height) > 3,
      );
      expect(wrong).toEqual([]);
    });
  });

  it('says in each heading what its cells hold and in which unit', async () => {
    await look(addressOf(card), {}, async (page) => {
      const captions = await page.locator('.card-face caption:visible').allTextContents();
      expect(captions).toEqual([
        'Framing distance by shot: subject distance (m)',
        'Depth of field: depth in all (cm)',
        'Flash power: power needed',
      ]);
      await page.locator('#units-imperial').check();
      expect(await page.locator('.card-face caption:visible').allTextContents()).not.toEqual(
        captions,
      );
    });
  });

  it('breaks no line between feet and their inches', async () => {
    await look(addressOf(card, '?left=frame-size&units=imperial'), {}, async (page) => {
      const cells = await page.locator('#face-frame-size td:visible').allTextContents();
      const feet = cells.filter((text) => text.includes('\u2032'));
      expect(feet.length).toBeGreaterThan(20);
      for (const text of feet) expect(text).not.toMatch(/\u2032 \d| \u00d7/);
    });
  });

  it('takes a caution along with the numbers it belongs to', async () => {
    await look(addressOf(card, '?back=tipping-pull'), {}, async (page) => {
      const caution = await page.locator('#face-tipping-pull .card-caution:visible').textContent();
      expect(caution).toContain('Ballast every');
      expect(caution).toContain('local code');
    });
  });

  it('says when one table was chosen twice, and the other face stays blank, also without script', async () => {
    await look(addressOf(card), { javaScriptEnabled: false }, async (page) => {
      const twice = page.locator('.card-twice');
      expect(await twice.isVisible()).toBe(false);
      await page.locator('summary', { hasText: 'Back' }).click();
      await page.locator('#back-depth-of-field').check();
      expect(await twice.isVisible()).toBe(true);
      await page.locator('#back-gels').check();
      expect(await twice.isVisible()).toBe(false);
    });
    await look(addressOf(card, '?left=falloff&right=falloff'), {}, async (page) => {
      expect(await page.locator('.card-twice').isVisible()).toBe(true);
    });
  });

  it('says where it can be found again', async () => {
    await look(addressOf(card), {}, async (page) => {
      const { host, pathname } = new URL(page.url());
      expect(await page.locator('[data-card-address]').textContent()).toBe(`${host}${pathname}`);
    });
  });

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
