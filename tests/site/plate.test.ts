import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { keyboard } from '../../src/widgets/parts/keyboard.ts';
import { addressOf, look, pages, type Built } from '../support/site.ts';

const page = (path: string): Built => {
  const found = pages.find((one) => one.path === path);
  if (!found) throw new Error(`The built site has no page ${path}.`);
  return found;
};

/** One plate on one page, in the words a reader would use for its parts. */
class Plate {
  readonly page: Page;
  readonly section: Locator;
  constructor(page: Page, id: string) {
    this.page = page;
    this.section = page.locator(`#plate-${id}`);
  }
  field(id: string): Locator {
    return this.section.locator(`[data-id="${id}"]`);
  }
  input(id: string): Locator {
    return this.field(id).locator('input[type=text]').first();
  }
  slider(id: string): Locator {
    return this.field(id).locator('input[type=range]');
  }
  note(id: string): Locator {
    return this.field(id).locator('[id$="-note"]');
  }
  get result(): Locator {
    return this.section.locator('.result');
  }
  get number(): Locator {
    return this.section.locator('.result-number');
  }
  get notice(): Locator {
    return this.section.locator('.result-notice');
  }
  tool(name: string): Locator {
    return this.section.getByRole('button', { name, exact: true });
  }
  /** Waits until the large number reads so. */
  async reads(text: string): Promise<void> {
    await expect.poll(() => this.number.textContent(), { timeout: 5000 }).toBe(text);
  }
}

/** Opens a plate’s own page, and fails on anything the browser complains of. */
async function plate(
  id: string,
  use: (plate: Plate, page: Page) => Promise<void>,
  {
    path = `plates/${id}/`,
    query = '',
    options = {},
  }: { path?: string; query?: string; options?: Parameters<typeof look>[1] } = {},
): Promise<void> {
  await look(
    addressOf(page(path), query),
    { viewport: { width: 1280, height: 900 }, ...options },
    async (tab) => {
      const complaints: string[] = [];
      tab.on('console', (message) => complaints.push(message.text()));
      tab.on('pageerror', (error) => complaints.push(error.message));
      await use(new Plate(tab, id), tab);
      expect(complaints).toEqual([]);
    },
  );
}

describe('a plate', () => {
  it('computes while a reader types, and takes the unit typed with a number', async () => {
    await plate('framing-distance', async (it) => {
      await it.reads('2.21 m');
      await it.input('focal-length').fill('50');
      // 50 · (1 + 900/36) = 1300 mm
      await it.reads('1.30 m');
      await it.input('frame-height').fill('180 cm');
      // 50 · (1 + 1800/36) = 2550 mm
      await it.reads('2.55 m');
      expect(await it.note('frame-height').textContent()).toBe('read as 1.8 m');
      expect(await it.input('frame-height').inputValue()).toBe('180 cm');
    });
  });

  it('moves drawing, list of results, worked line and words of the drawing together', async () => {
    await plate('angle-of-view', async (it) => {
      await it.input('focal-length').fill('50');
      await it.input('subject-distance').fill('∞');
      // 2 arctan(36/100) = 39.6°, 2 arctan(24/100) = 27.0°
      await it.reads('39.6°');
      expect(await it.section.locator('[data-out=vertical]').textContent()).toBe('27.0°');
      expect(await it.section.locator('[data-val=horizontal]').textContent()).toBe('39.6°');
      expect(await it.section.locator('svg desc').textContent()).toContain('39.6°');
      expect(await it.section.locator('.drawing-data tbody').textContent()).toContain('39.6°');
      expect(await it.section.locator('svg g text').allTextContents()).toContain('39.6°');
    });
  });

  it('is the same to the letter after a change and a reset as before any script ran', async () => {
    const markup = (tab: Page): Promise<string> =>
      tab.locator('[data-plate]').evaluate((section) => {
        const copy = section.cloneNode(true) as HTMLElement;
        const walker = document.createTreeWalker(copy, NodeFilter.SHOW_COMMENT);
        const comments: Node[] = [];
        while (walker.nextNode()) comments.push(walker.currentNode);
        for (const comment of comments) comment.parentNode?.removeChild(comment);
        for (const element of copy.querySelectorAll('*')) {
          element.removeAttribute('value');
          element.removeAttribute('checked');
          element.removeAttribute('selected');
          const names = [...element.attributes]
            .map(({ name, value }) => [name, value] as const)
            .filter(([, value]) => value !== '' || true);
          for (const [name] of names) element.removeAttribute(name);
          for (const [name, value] of names.sort(([a], [b]) => a.localeCompare(b)))
            if (!(name === 'placeholder' && value === '')) element.setAttribute(name, value);
        }
        copy.querySelectorAll('[role=status]').forEach((status) => (status.textContent = ''));
        copy.normalize();
        return copy.outerHTML.replaceAll(/\s+/g, ' ').replaceAll(/> | </g, (gap) => gap.trim());
      });
    for (const id of ['backdrop-coverage', 'equivalence']) {
      let before = '';
      await look(addressOf(page(`plates/${id}/`)), { javaScriptEnabled: false }, async (tab) => {
        // Reading the page takes a script of ours, which a browser without script still runs.
        before = await markup(tab);
        expect(before.length).toBeGreaterThan(5000);
      });
      await plate(id, async (it, tab) => {
        const first = await it.result.textContent();
        await it.input('focal-length').fill('35');
        await expect.poll(() => it.result.textContent()).not.toBe(first);
        await it.tool('Reset').click();
        await expect.poll(() => it.result.textContent()).toBe(first);
        expect(await markup(tab)).toBe(before);
      });
    }
  });

  it('keeps what cannot be used, says why beside it, and leaves the last good result in place', async () => {
    await plate('framing-distance', async (it) => {
      const input = it.input('frame-height');
      await input.fill('tall');
      await expect
        .poll(() => it.note('frame-height').textContent())
        .toMatch(/^Frame height must be between 0\.001 m and 1000 m; “tall” is not a number\./);
      expect(await input.inputValue()).toBe('tall');
      expect(await input.getAttribute('aria-invalid')).toBe('true');
      expect(await input.getAttribute('aria-describedby')).toContain(
        await it.note('frame-height').getAttribute('id'),
      );
      expect(await it.number.textContent()).toBe('2.21 m');
      expect(await it.result.getAttribute('data-stale')).toBe('');
      await input.fill('0.9');
      await expect.poll(() => it.result.getAttribute('data-stale')).toBeNull();
      expect(await input.getAttribute('aria-invalid')).toBeNull();
      expect(await it.note('frame-height').textContent()).toBe('');
    });
  });

  it('asks which of two readings was meant', async () => {
    await plate('frame-size', async (it) => {
      await it.input('subject-distance').fill('3,145');
      await it.field('subject-distance').getByRole('button', { name: '3.145 m' }).click();
      // 36/85 · (3145 − 85) = 1296 mm
      await it.reads('1,30 m');
      expect(await it.note('subject-distance').textContent()).toBe('');
    });
  });

  it('speaks a result once things are quiet, in one polite region', async () => {
    await plate('framing-distance', async (it) => {
      const status = it.section.locator('[role=status]');
      expect(await status.count()).toBe(1);
      // Typed and asked at one moment: however slow the machine, nothing may have been said between two keys.
      const atOnce = await it.section.evaluate((section) => {
        const input = section.querySelector<HTMLInputElement>(
          '[data-id="focal-length"] input[type=text]',
        );
        for (const typed of input ? ['5', '50'] : []) {
          if (input) input.value = typed;
          input?.dispatchEvent(new Event('input', { bubbles: true }));
        }
        return section.querySelector('[role=status]')?.textContent;
      });
      expect(atOnce).toBe('');
      await expect.poll(() => status.textContent()).toContain('1.30 m');
    });
  });

  it('changes units without changing a result', async () => {
    await plate('frame-size', async (it) => {
      await it.tool('imperial').click();
      await expect.poll(() => it.input('subject-distance').inputValue()).toBe('7.25');
      expect(await it.field('subject-distance').locator('.field-unit').textContent()).toBe('ft');
      // 0.9 m is 35.4 in
      await it.reads('2′ 11½″');
      expect(await it.tool('imperial').getAttribute('aria-pressed')).toBe('true');
      await it.tool('metric').click();
      await it.reads('0.900 m');
      expect(await it.input('subject-distance').inputValue()).toBe('2.21');
    });
  });

  it('opens two fields for a size of one’s own', async () => {
    await plate('framing-distance', async (it) => {
      await it.field('format').locator('select').selectOption('custom');
      const [one, other] = [
        it.field('format').getByLabel('Format, one side'),
        it.field('format').getByLabel('Format, other side'),
      ];
      await expect.poll(() => one.inputValue()).toBe('36');
      await one.fill('30');
      await other.fill('20');
      // 85 · (1 + 900/30) = 2635 mm
      await it.reads('2.64 m');
      await other.fill('');
      await expect.poll(() => it.note('format').textContent()).toMatch(/^Format must be one of/);
      await it.field('format').locator('select').selectOption('36x24');
      await it.reads('2.21 m');
      expect(await it.field('format').locator('input').count()).toBe(0);
    });
  });

  it('answers the question asked the other way round', async () => {
    await plate('backdrop-coverage', async (it) => {
      await it.section.getByText('Ask the other way round').click();
      await it.section.locator('[name=input]').selectOption('f');
      await it.section.locator('[name=result]').selectOption('viewWidth');
      await it.section.locator('[name=value]').fill('1.2');
      await it.section.getByRole('button', { name: 'Work it out' }).click();
      await it.reads('1.20 m');
      expect(await it.section.locator('[data-ask] + p').textContent()).toBe(
        'The focal length is set to 71.79 mm.',
      );
      await it.section.locator('[name=value]').fill('-3');
      await it.section.getByRole('button', { name: 'Work it out' }).click();
      await expect
        .poll(() => it.section.locator('[data-ask] + p').textContent())
        .toMatch(/can be reached/);
    });
  });

  it('loads a published case at one press', async () => {
    await plate('angle-of-view', async (it, tab) => {
      await it.section.locator('a[data-load]').first().click();
      await expect.poll(() => it.input('focal-length').inputValue()).toBe('50');
      await it.reads('39.6°');
      await expect.poll(() => new URL(tab.url()).searchParams.get('focal-length')).toBe('50mm');
    });
  });
});

describe('a plate’s address', () => {
  it('follows the fields, keeps the hash, and brings the state back', async () => {
    await plate(
      'room-fit',
      async (it, tab) => {
        await it.input('room-length').fill('4,2 m');
        await it.reads('59 mm');
        await expect.poll(() => tab.url()).toContain('room-length=4.2m');
        expect(new URL(tab.url()).hash).toBe('#plate-room-fit');
        await tab.reload();
        await it.reads('59 mm');
        expect(await it.input('room-length').inputValue()).toBe('4.2');
        expect(await it.notice.isHidden()).toBe(true);
      },
      { query: '#plate-room-fit' },
    );
  });

  it('is copied, or shown where the browser will not', async () => {
    await plate('framing-distance', async (it, tab) => {
      await tab.context().grantPermissions(['clipboard-read', 'clipboard-write']);
      await it.tool('Copy link').click();
      await expect.poll(() => it.notice.textContent()).toBe('Link copied.');
      expect(await tab.evaluate(() => navigator.clipboard.readText())).toMatch(
        /\/plates\/framing-distance\/\?format=36x24&orientation=portrait&print-aspect=none&focal-length=85mm&frame-height=0\.9m$/,
      );
      await tab.evaluate(() => Object.defineProperty(navigator, 'clipboard', { value: undefined }));
      await it.tool('Copy link').click();
      await expect
        .poll(() => it.notice.textContent())
        .toMatch(/^Copy this address: http.*frame-height=0\.9m$/);
    });
  });

  it.each([
    ['frame-height=-1m', /frame height could not be used/],
    ['frame-height=1e999m', /frame height could not be used/],
    ['frame-height=NaN', /frame height could not be used/],
    ['frame-height=1m&frame-height=2m', /gives frame height 2 times/],
    ['format=36x24', /gives no focal length/],
    ['frame-height=%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E', /frame height could not be used/],
    [
      'frame-height=0.9m&%3Cscript%3Ealert(1)%3C/script%3E=1',
      /also holds “<script>alert\(1\)<\/script>”/,
    ],
    [`frame-height=0.9m&focal-length=${'9'.repeat(3000)}mm`, /too long/],
  ])('gives way to the start with a notice: %s', async (query, notice) => {
    await plate(
      'framing-distance',
      async (it, tab) => {
        await expect.poll(() => it.notice.textContent()).toMatch(notice);
        expect(await it.notice.isVisible()).toBe(true);
        await it.reads('2.21 m');
        expect(await tab.locator('script:not([src]), img').count()).toBe(0);
      },
      {
        query:
          `?${query.startsWith('format') ? '' : 'orientation=portrait&focal-length=85mm&format=36x24&'}${query}`.replace(
            '?format=36x24',
            '?orientation=portrait&format=36x24',
          ),
      },
    );
  });

  it('speaks to the plate its hash names, or else to the first that has one of its keys', async () => {
    const path = 'focal-length/room-fit/';
    const both = async (query: string): Promise<[string | null, string | null]> => {
      let found: [string | null, string | null] = [null, null];
      await plate(
        'room-fit',
        async (it, tab) => {
          const other = new Plate(tab, 'spotter-reach');
          // The plate that was spoken to writes its own state into the address.
          const given = new URL(query, tab.url()).search;
          await expect.poll(() => new URL(tab.url()).search, { timeout: 10_000 }).not.toBe(given);
          found = [
            await it.input('focal-length').inputValue(),
            await other.input('child-offset').inputValue(),
          ];
        },
        { path, query },
      );
      return found;
    };
    expect(
      await both('?child-offset=0.1m&reach=0.6m&body-clearance=0.2m&frame-width=0.6m'),
    ).toEqual(['85', '0.1']);
    expect(await both('?focal-length=50mm&frame-height=0.9m&format=36x24')).toEqual(['50', '0']);
    expect(
      await both('?focal-length=50mm&frame-height=0.9m&format=36x24&reach=0.5m#plate-room-fit'),
    ).toEqual(['50', '0']);
  });
});

describe('on a phone', () => {
  it('keeps the result in sight while a field under it is changed', async () => {
    await plate(
      'backdrop-coverage',
      async (it, tab) => {
        await it.input('backdrop-width').scrollIntoViewIfNeeded();
        await tab.evaluate(() => scrollBy(0, 200));
        await it.input('backdrop-width').fill('1');
        await expect.poll(() => it.result.textContent()).toContain('short on each side');
        const box = await it.number.boundingBox();
        expect(box?.y).toBeGreaterThanOrEqual(0);
        expect(box?.y).toBeLessThan(200);
      },
      { options: { viewport: { width: 390, height: 844 }, hasTouch: true } },
    );
  });

  it('gives every control at least 24 pixels each way', async () => {
    for (const id of ['equivalence', 'room-fit']) {
      await plate(
        id,
        async (it) => {
          for (const summary of await it.section.locator('.plate-island summary').all())
            await summary.click();
          const small = await it.section
            .locator('.plate-island :is(button, input, select, summary)')
            .evaluateAll((controls) =>
              controls
                .filter((control) => control.checkVisibility() && !control.matches('[type=radio]'))
                .map((control) => ({
                  name: control.outerHTML.slice(0, 90),
                  box: control.getBoundingClientRect(),
                }))
                .filter(({ box }) => box.width < 24 || box.height < 24)
                .map(({ name }) => name),
            );
          expect(small).toEqual([]);
        },
        { options: { viewport: { width: 390, height: 844 } } },
      );
    }
  });
});

describe('by keyboard alone', () => {
  const focused = (tab: Page): Promise<string> =>
    tab.evaluate(() => {
      const { tagName, textContent } = document.activeElement ?? document.body;
      const input = document.activeElement as HTMLInputElement;
      const field = input.closest<HTMLElement>('[data-id]')?.dataset['id'] ?? '';
      return tagName === 'INPUT'
        ? `${field} ${input.type}`
        : tagName === 'SELECT'
          ? `${field} list`
          : textContent.trim();
    });

  const rows: Record<(typeof keyboard)[number]['id'], (it: Plate, tab: Page) => Promise<void>> = {
    async tab(it, tab) {
      await it.input('frame-height').focus();
      const seen: string[] = [];
      for (let i = 0; i < 15; i += 1) {
        seen.push(await focused(tab));
        await tab.keyboard.press('Tab');
      }
      expect(seen).toEqual([
        'frame-height text', 'frame-height range', 'focal-length text', 'focal-length range', '35', '50', '60', '85', '105', '135', 'orientation radio', 'format list', 'More settings', 'Copy link', 'Reset',
      ]); // prettier-ignore
    },
    async type(it, tab) {
      await it.input('frame-height').focus();
      await tab.keyboard.press('Control+A');
      await tab.keyboard.type('3ft');
      // 3 ft is 914.4 mm: 85 · (1 + 914.4/36) = 2244 mm
      await it.reads('2.24 m');
    },
    async arrow(it, tab) {
      await it.slider('focal-length').focus();
      await tab.keyboard.press('ArrowRight');
      await expect.poll(() => it.input('focal-length').inputValue()).toBe('86');
      await tab.keyboard.press('ArrowUp');
      await tab.keyboard.press('ArrowDown');
      await tab.keyboard.press('ArrowLeft');
      await tab.keyboard.press('ArrowLeft');
      await expect.poll(() => it.input('focal-length').inputValue()).toBe('84');
      expect(await it.slider('focal-length').getAttribute('aria-valuetext')).toBe('84 mm');
    },
    async page(it, tab) {
      await it.slider('focal-length').focus();
      await tab.keyboard.press('PageUp');
      await expect
        .poll(async () => Number(await it.input('focal-length').inputValue()))
        .toBeGreaterThan(95);
      await tab.keyboard.press('PageDown');
      await expect.poll(() => it.input('focal-length').inputValue()).toBe('85');
    },
    async ends(it, tab) {
      await it.slider('focal-length').focus();
      await tab.keyboard.press('End');
      await expect.poll(() => it.input('focal-length').inputValue()).toBe('200');
      await tab.keyboard.press('Home');
      await expect.poll(() => it.input('focal-length').inputValue()).toBe('24');
    },
    async radio(it, tab) {
      await it.field('orientation').locator('input:checked').focus();
      await tab.keyboard.press('ArrowLeft');
      // Lying: 85 · (1 + 900/24) = 3273 mm
      await it.reads('3.27 m');
      await tab.keyboard.press('ArrowRight');
      await it.reads('2.21 m');
    },
    async list(it, tab) {
      await it.field('format').locator('select').focus();
      await tab.keyboard.press('ArrowDown');
      // 23.6 mm upright: 85 · (1 + 900/23.6) = 3327 mm
      await it.reads('3.33 m');
    },
    async press(it, tab) {
      await it.field('focal-length').getByRole('button', { name: '50 mm' }).focus();
      await tab.keyboard.press('Enter');
      await it.reads('1.30 m');
      await it.tool('Reset').focus();
      await tab.keyboard.press('Space');
      await it.reads('2.21 m');
      await it.section.getByText('More settings').focus();
      await tab.keyboard.press('Enter');
      expect(await it.field('print-aspect').isVisible()).toBe(true);
    },
    async ask(it, tab) {
      await it.section.getByText('Ask the other way round').focus();
      await tab.keyboard.press('Enter');
      await it.section.locator('[name=input]').selectOption('f');
      await it.section.locator('[name=value]').focus();
      await tab.keyboard.type('1.3m');
      await tab.keyboard.press('Enter');
      await it.reads('1.30 m');
      await expect.poll(() => it.input('focal-length').inputValue()).toBe('50');
    },
  };

  it.each(
    keyboard.map(({ id, keys, where, does }) => [`${keys}, on ${where}: ${does}`, id] as const),
  )('%s', async (_title, id) => {
    await plate('framing-distance', (it, tab) => rows[id](it, tab));
  });
});
