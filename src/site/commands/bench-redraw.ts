import type { Page } from 'playwright-core';
import { formulas } from '../../formulas.ts';
import { against, median, newPhone, phone, withSite } from './bench-phone.ts';
import type { Sheet } from './bench-phone.ts';

/** Milliseconds from the key to the painted result: two and a half frames where something is redrawn, else one. */
const limits = { redraw: 44, input: 1000 / 60 };

/** Milliseconds from each of five keys to the paint that shows its result. */
async function keyToPaint(page: Page, field: string): Promise<number[]> {
  await page.evaluate(() => {
    const times: number[] = [];
    Object.assign(globalThis, { times });
    addEventListener(
      'input',
      (event) => {
        requestAnimationFrame(() => {
          // A message sent from a frame arrives once that frame is painted.
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () => times.push(performance.now() - event.timeStamp);
          port2.postMessage(null);
        });
      },
      true,
    );
  });
  await page.locator(field).first().focus();
  await page.keyboard.press('Home');
  await page.keyboard.press('ArrowRight');
  // The first two warm up; then five are counted.
  for (let key = 0; key < 7; key += 1) {
    await page.keyboard.press(key % 2 === 0 ? '1' : 'Backspace');
    // Half a second after a key the address and the spoken result follow; that is over before the next one.
    await page.waitForTimeout(800);
  }
  const times = await page.evaluate(() => (globalThis as unknown as { times: number[] }).times);
  if (times.length !== 7) throw new Error(`Of 7 keys ${times.length} were answered.`);
  return times.slice(2);
}

/** From a key in each plate's first field to its painted result. */
export async function timeRedraws(sheet: Sheet): Promise<void> {
  sheet.heading(`From key to painted result on "phone" (${phone.saying}), median of five`);
  await withSite(async (url, browser) => {
    for (const id of Object.keys(formulas)) {
      const page = await newPhone(browser);
      await page.goto(`${url}plates/${id}/`, { waitUntil: 'load' });
      const plate = `[data-plate="${id}"]`;
      await page.locator(`${plate} .result`).first().scrollIntoViewIfNeeded();
      const field = `${plate} input:is([type=text], :not([type]))`;
      await page.locator(field).first().scrollIntoViewIfNeeded();
      await page.waitForLoadState('networkidle');
      const drawn = (await page.locator(`${plate} .drawing svg`).count()) > 0;
      const times = await keyToPaint(page, field);
      sheet.line(
        against(
          `${id}: ${drawn ? 'redraw' : 'input'}`,
          median(times),
          drawn ? limits.redraw : limits.input,
        ),
      );
      await page.context().close();
    }
  });
}
