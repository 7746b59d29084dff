import type { Page } from 'playwright-core';
import { judge } from './axe.ts';
import type { Judgement } from './axe.ts';
import { skip, walk } from './keyboard.ts';
import type { Walk } from './keyboard.ts';
import { cutOff, inForcedColours, lightness, sticksOut, stillMoving, tooSmall } from './measure.ts';
import { addressOf, look, nextFrames, wake } from './site.ts';
import type { Built } from './site.ts';

/** All that is seen of one page in one window, on screens of many kinds, on paper and by keyboard. */
export interface Sight {
  readonly axe: readonly Judgement[];
  /** What sticks out sideways, by the screen. */
  readonly sticksOut: Readonly<Record<string, readonly string[]>>;
  readonly tooSmall: readonly string[];
  readonly cutOff: readonly string[];
  readonly forced: ReturnType<typeof inForcedColours>;
  readonly print: ReturnType<typeof lightness> & { readonly pdf: Buffer };
  readonly skip: { readonly href: string | null; readonly arrives: boolean };
  /** Of pages that were to be gone through to the end. */
  readonly walk: Walk | undefined;
  /** Calculators that do not move with their sliders. */
  readonly lifeless: readonly string[];
  readonly moving: ReturnType<typeof stillMoving>;
}

/**
 * Opens a page once and looks at it in every way that needs no other reader: a window can be made wider, dark or paper,
 * and shows what a new one would. What leaves traces comes last: the keys, and the slider that is moved.
 */
export function sightOf(built: Built, { wholeWalk }: { wholeWalk: boolean }): Promise<Sight> {
  return look(addressOf(built), { reducedMotion: 'reduce' }, async (page) => {
    await page.evaluate(() => document.fonts.ready.then(() => undefined));
    await wake(page);
    const out: Record<string, string[]> = {};
    const screen = async (name: string, width: number, height: number): Promise<void> => {
      await page.setViewportSize({ width, height });
      out[name] = await page.evaluate(sticksOut);
    };
    await screen('320 px', 320, 640);
    await screen('390 px', 390, 844);
    const small = await page.evaluate(tooSmall);
    const judgements = await judge(page);

    // A4 upright less margins of 15 mm is 180 mm across: 680 px. From the dark theme, with which judge ends.
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    await screen('paper', 680, 1010);
    const print = { ...(await page.evaluate(lightness)), pdf: await page.pdf({ format: 'A4' }) };

    await page.emulateMedia({ media: 'screen', forcedColors: 'active' });
    await screen('390 px, forced colours', 390, 844);
    const forced = await page.evaluate(inForcedColours);

    await page.emulateMedia({ forcedColors: 'none', colorScheme: 'light' });
    await screen('1280 px', 1280, 900);
    await doubleText(page, true);
    await screen('1280 px, text of twice the size', 1280, 900);
    const cut = await page.evaluate(cutOff);
    await doubleText(page, false);

    await page.evaluate(() => {
      scrollTo(0, 0);
    });
    const walked = wholeWalk ? await walk(page) : undefined;
    if (walked === undefined) await page.keyboard.press('Tab');
    // The way on from the first stop; the walk has come to the last one.
    else
      await page
        .locator('[data-stop]')
        .nth(walked.reached[0] ?? 0)
        .focus();
    const skipped = await skip(page);

    await page.setViewportSize({ width: 390, height: 844 });
    const lifeless = await withoutLife(page);
    const moving = await page.evaluate(stillMoving);
    return {
      axe: judgements,
      sticksOut: out,
      tooSmall: small,
      cutOff: cut,
      forced,
      print,
      skip: skipped,
      walk: walked,
      lifeless,
      moving,
    };
  });
}

const doubleText = (page: Page, doubled: boolean): Promise<void> =>
  page.evaluate((on) => {
    document.documentElement.style.fontSize = on ? '200%' : '';
  }, doubled);

/** Moves the first slider of every calculator by its keys, and names the calculators of which no field follows. */
async function withoutLife(page: Page): Promise<string[]> {
  const lifeless: string[] = [];
  for (const plate of await page.locator('[data-plate]').all()) {
    const slider = plate.locator('input[type=range]').first();
    if ((await slider.count()) === 0) continue;
    const texts = (): Promise<string> =>
      plate
        .locator('input:is([type=text], :not([type]))')
        .evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value).join(' '));
    const before = await texts();
    await slider.focus();
    for (let press = 0; press < 3; press += 1) await page.keyboard.press('ArrowRight');
    await nextFrames(page);
    if ((await texts()) === before) lifeless.push((await plate.getAttribute('data-plate')) ?? '');
  }
  return lifeless;
}
