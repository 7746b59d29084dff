import type { CDPSession, Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { addressOf, look, pages } from '../support/site.ts';

/** One plate with handles, on its own page, as a reader with a phone or a desk meets it. */
class Held {
  readonly page: Page;
  readonly section: Locator;
  constructor(page: Page, id: string) {
    this.page = page;
    this.section = page.locator(`#plate-${id}`);
  }
  handle(id: string): Locator {
    return this.section.locator(`[data-handle="${id}"]`);
  }
  field(id: string): Locator {
    return this.section.locator(`[data-id="${id}"] input[type=text]`).first();
  }
  /** A field's number, whatever sign it is written with. */
  async number(id: string): Promise<number> {
    return Number((await this.field(id).inputValue()).replace('−', '-'));
  }
  async middle(id: string): Promise<{ x: number; y: number; width: number; height: number }> {
    const target = this.handle(id).locator('.handle-target');
    await target.scrollIntoViewIfNeeded();
    const box = await target.boundingBox();
    if (!box) throw new Error(`Handle ${id} has no box.`);
    return {
      x: box.x + box.width / 2,
      y: box.y + box.height / 2,
      width: box.width,
      height: box.height,
    };
  }
  /** Pixels a metre of the drawing, measured on the page: by how far a step of the keyboard moves the handle. */
  async pixels(id: string): Promise<number> {
    const before = await this.middle(id);
    await this.handle(id).press('Shift+ArrowRight');
    await expect.poll(async () => (await this.middle(id)).x).toBeGreaterThan(before.x + 3);
    const after = await this.middle(id);
    await this.handle(id).press('Shift+ArrowLeft');
    await expect.poll(async () => (await this.middle(id)).x).toBeLessThan(before.x + 1);
    return (after.x - before.x) / 0.25;
  }
}

const usual: Readonly<Record<string, string>> = {
  'rim-light':
    '?light-behind=1.2m&light-aside=-0.9m&light-height=0.9m&beam-angle=20deg&set-depth=1.6m&camera-distance=2.21m',
  falloff: '?near=1.2m&far=1.5m',
  feathering: '',
};

const open = async (
  id: string,
  use: (plate: Held, page: Page) => Promise<void>,
  options: Parameters<typeof look>[1] = {},
  query = usual[id] ?? '',
): Promise<void> => {
  const page = pages.find(({ path }) => path === `plates/${id}/`);
  if (!page) throw new Error(`The built site has no plate ${id}.`);
  await look(
    addressOf(page, query),
    { viewport: { width: 1280, height: 900 }, ...options },
    async (tab) => {
      const complaints: string[] = [];
      tab.on('console', (message) => complaints.push(message.text()));
      tab.on('pageerror', (error) => complaints.push(error.message));
      const it = new Held(tab, id);
      // An address with a query is read by a part that comes a moment later.
      const [first] = [...new URLSearchParams(query)];
      if (first && options.javaScriptEnabled !== false)
        await expect
          .poll(() => it.field(first[0]).inputValue())
          .toContain(String(Number.parseFloat(first[1])));
      await use(it, tab);
      expect(complaints).toEqual([]);
    },
  );
};

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const;

/** A finger as the browser feels it: down, along, up. */
const swipe = async (
  session: CDPSession,
  from: { x: number; y: number },
  to: { x: number; y: number },
): Promise<void> => {
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', x: number, y: number) =>
    session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: type === 'touchEnd' ? [] : [{ x, y }],
    });
  await send('touchStart', from.x, from.y);
  for (let i = 1; i <= 8; i += 1)
    await send('touchMove', from.x + ((to.x - from.x) * i) / 8, from.y + ((to.y - from.y) * i) / 8);
  await send('touchEnd', to.x, to.y);
};

describe('a handle moved by mouse', () => {
  it('sets both fields it stands for, and results and drawing follow while it moves', async () => {
    await open('rim-light', async (it, page) => {
      const scale = await it.pixels('light-plan');
      const at = await it.middle('light-plan');
      const drawn = await it.section.locator('svg desc').textContent();
      await page.mouse.move(at.x + 3, at.y - 2);
      await page.mouse.down();
      await page.mouse.move(at.x + 3 + 0.1 * scale, at.y - 2 + 0.1 * scale, { steps: 4 });
      // Still held down: the numbers are there already.
      await expect.poll(() => it.number('light-behind')).toBeCloseTo(1.3, 1);
      await expect.poll(() => it.section.locator('svg desc').textContent()).not.toBe(drawn);
      await page.mouse.move(at.x + 3 + 0.2 * scale, at.y - 2 + 0.3 * scale, { steps: 4 });
      await page.mouse.up();
      // From 1.2 m behind and 0.9 m to the left, to within a pixel’s worth.
      await expect
        .poll(async () => Math.abs((await it.number('light-behind')) - 1.4))
        .toBeLessThan(0.021);
      await expect
        .poll(async () => Math.abs((await it.number('light-aside')) + 0.6))
        .toBeLessThan(0.021);
      // Let go of, it stays.
      const set = await it.number('light-behind');
      await page.mouse.move(at.x - 100, at.y);
      await page.waitForTimeout(200);
      expect(await it.number('light-behind')).toBe(set);
    });
  });

  it('keeps hold where the pointer leaves the drawing', async () => {
    await open('rim-light', async (it, page) => {
      const at = await it.middle('light-side');
      await page.mouse.move(at.x, at.y);
      await page.mouse.down();
      await page.mouse.move(at.x, at.y + 60, { steps: 3 });
      await page.mouse.move(5, at.y + 60, { steps: 3 });
      await page.mouse.up();
      expect(await it.number('light-behind')).toBeLessThan(-1);
      expect(await it.number('light-height')).toBeLessThan(0.9);
    });
  });

  it('does nothing while it is only pressed', async () => {
    await open('feathering', async (it, page) => {
      const before = await it.number('aim');
      const at = await it.middle('aim-plan');
      await page.mouse.move(at.x + 4, at.y + 4);
      await page.mouse.down();
      await page.mouse.up();
      await page.waitForTimeout(200);
      expect(await it.number('aim')).toBe(before);
      expect(await it.handle('aim-plan').evaluate((one) => one === document.activeElement)).toBe(
        true,
      );
    });
  });
});

describe('a handle moved by keyboard', () => {
  it('goes 5 cm a step and 25 with Shift, and says where it is', async () => {
    await open('rim-light', async (it, page) => {
      const over = it.handle('light-plan');
      await over.focus();
      await page.keyboard.press('ArrowRight');
      await expect.poll(() => it.number('light-behind')).toBe(1.25);
      await page.keyboard.press('Shift+ArrowDown');
      await expect.poll(() => it.number('light-aside')).toBe(-0.65);
      await expect
        .poll(() => over.getAttribute('aria-valuetext'))
        .toBe('1.25 m behind the child, 0.65 m to camera-left');
      expect(await over.getAttribute('aria-valuenow')).toBe('1.25');
      await it.handle('light-side').focus();
      await page.keyboard.press('ArrowUp');
      await expect.poll(() => it.number('light-height')).toBe(0.95);
      // Two steps before the page is drawn anew are two steps.
      await page.keyboard.press('ArrowUp');
      await page.keyboard.press('ArrowUp');
      await expect.poll(() => it.number('light-height')).toBe(1.05);
    });
  });

  it('leaves to the page what it cannot do', async () => {
    await open('falloff', async (it, page) => {
      await it.handle('second-plan').focus();
      const top = await page.evaluate(() => scrollY);
      for (let i = 0; i < 6; i += 1) await page.keyboard.press('ArrowDown');
      await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(top);
      expect(await it.number('far')).toBe(1.5);
      await page.keyboard.press('ArrowRight');
      await expect.poll(() => it.number('far')).toBe(1.55);
    });
  });

  it('is reached with Tab, shows where the focus is, and keeps it while it moves', async () => {
    await open('rim-light', async (it, page) => {
      await it.handle('light-plan').focus();
      await page.keyboard.press('Tab');
      const active = it.section.locator('.handle:focus-visible');
      await expect.poll(() => active.getAttribute('data-handle')).toBe('camera-plan');
      const ring = await active.locator('.handle-target').evaluate((one) => {
        const { stroke, strokeWidth } = getComputedStyle(one);
        return { stroke, strokeWidth };
      });
      expect(ring.stroke).not.toBe('none');
      expect(ring.strokeWidth).toBe('3px');
      await page.keyboard.press('ArrowLeft');
      await expect.poll(() => it.number('camera-distance')).toBe(2.26);
      expect(await active.getAttribute('data-handle')).toBe('camera-plan');
    });
  });
});

describe('a handle on a phone', () => {
  it('is 24 pixels or more across, and follows a finger without scrolling the page', async () => {
    await open(
      'rim-light',
      async (it, page) => {
        for (const id of ['light-plan', 'camera-plan', 'light-side']) {
          const { width, height } = await it.middle(id);
          expect(width, id).toBeGreaterThanOrEqual(24);
          expect(height, id).toBeGreaterThanOrEqual(24);
        }
        const session = await page.context().newCDPSession(page);
        const at = await it.middle('light-plan');
        const top = await page.evaluate(() => scrollY);
        await swipe(session, at, { x: at.x, y: at.y + 40 });
        await expect.poll(() => it.number('light-aside')).toBeGreaterThan(-0.6);
        expect(await it.number('light-behind')).toBeCloseTo(1.2, 1);
        expect(await page.evaluate(() => scrollY)).toBe(top);
        // Beside it the same finger scrolls the page, and moves nothing.
        const set = await it.number('light-aside');
        const free = await it.middle('camera-plan');
        await swipe(
          session,
          { x: free.x + 40, y: free.y + 60 },
          { x: free.x + 40, y: free.y - 140 },
        );
        await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(top + 50);
        expect(await it.number('light-aside')).toBe(set);
      },
      phone,
    );
  });
});

describe('handles and the rest of the plate', () => {
  it('follow the fields', async () => {
    await open('falloff', async (it) => {
      const before = await it.middle('second-plan');
      await it.field('far').fill('1.6');
      await expect
        .poll(async () => (await it.middle('second-plan')).x)
        .toBeGreaterThan(before.x + 5);
      expect(await it.handle('second-plan').getAttribute('aria-valuetext')).toBe(
        '1.60 m from the light',
      );
    });
  });

  it('stay where they were while a field cannot be read', async () => {
    await open('falloff', async (it, page) => {
      const before = await it.handle('second-plan').getAttribute('transform');
      await it.field('far').fill('nonsense');
      await page.waitForTimeout(200);
      expect(await it.handle('second-plan').getAttribute('transform')).toBe(before);
    });
  });

  it('move in two ways once the plate goes by places', async () => {
    await open(
      'falloff',
      async (it, page) => {
        const first = it.handle('first-plan');
        await expect
          .poll(() => first.getAttribute('aria-valuetext'))
          .toBe('0.80 m along, 0.00 m across');
        await first.focus();
        await page.keyboard.press('Shift+ArrowDown');
        await expect
          .poll(() => first.getAttribute('aria-valuetext'))
          .toBe('0.80 m along, 0.25 m across');
        await expect.poll(() => it.field('near-place').inputValue()).toContain('0.25');
      },
      {},
      '?light-place=0.9m;-0.4m&near-place=0m;0.8m&far-place=-0.6m;1.4m',
    );
  });

  it('are not there without script, where they could do nothing', async () => {
    await open(
      'rim-light',
      async (it) => {
        expect(await it.section.locator('.handle').count()).toBe(3);
        expect(await it.handle('light-plan').isVisible()).toBe(false);
        expect(await it.section.locator('.handles-hint').isVisible()).toBe(false);
      },
      { javaScriptEnabled: false },
    );
  });

  it('are the same before any script as after a change and a reset', async () => {
    await open('feathering', async (it, page) => {
      const group = it.section.locator('.handles');
      const markup = (): Promise<string> =>
        group.evaluate((one) => {
          const all = [...one.querySelectorAll('*')];
          return all
            .map(
              (element) =>
                `${element.localName} ${[...element.attributes]
                  .map(({ name, value }) => `${name}=${value}`)
                  .sort()
                  .join(' ')}`,
            )
            .join('\n');
        });
      const before = await markup();
      expect(before).toContain('role=slider');
      await it.handle('near-plan').focus();
      await page.keyboard.press('ArrowRight');
      await expect.poll(markup).not.toBe(before);
      await it.section.getByRole('button', { name: 'Reset', exact: true }).click();
      await expect.poll(markup).toBe(before);
    });
  });
});
