import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { startChromium } from './browser.ts';
import { root } from './run.ts';
import { serve } from './serve.ts';

// The README's pictures, taken from the built site: run npm run build first.
const pictures = [
  {
    file: 'lesson.png',
    path: 'focal-length/backdrop-coverage/',
    to: '[data-plate]',
    width: 1200,
    height: 900,
  },
  {
    file: 'plate-on-a-phone.png',
    path: 'plates/room-fit/',
    to: '[data-plate]',
    width: 390,
    height: 844,
  },
] as const;

const folder = join(root, 'dist');
if (!existsSync(join(folder, 'index.html'))) {
  console.error('There is no built site yet: run npm run build first.');
  process.exit(1);
}
const target = join(root, 'public', 'tour');
mkdirSync(target, { recursive: true });

const site = await serve({ folder, port: 0 });
const browser = await startChromium();
try {
  for (const { file, path, to, width, height } of pictures) {
    const context = await browser.newContext({
      viewport: { width, height },
      colorScheme: 'light',
      reducedMotion: 'reduce',
      locale: 'en-GB',
    });
    const page = await context.newPage();
    await page.goto(site.url + path, { waitUntil: 'load' });
    const subject = page.locator(to).first();
    await subject.scrollIntoViewIfNeeded();
    await page.evaluate((selector) => {
      document.querySelector(selector)?.scrollIntoView({ block: 'start' });
    }, to);
    await page.evaluate(() => document.fonts.ready.then(() => true));
    await page.waitForLoadState('networkidle');
    await page.waitForTimeout(300);
    await page.screenshot({ path: join(target, file) });
    console.log(`public/tour/${file}`);
    await context.close();
  }
} finally {
  await browser.close();
  await site.close();
}
