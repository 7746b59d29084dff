import { describe, expect, it } from 'vitest';
import { sticksOut } from '../support/measure.ts';
import { addressOf, look, pages, titled, wake } from '../support/site.ts';

/** Colours of the paper and of all ink on it, as the screen would mix them, from 0 (black) to 1 (white). */
function lightness(): { paper: number; inks: number[] } {
  const canvas = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
  if (canvas === null) throw new Error('This browser has no canvas.');
  const of = (colour: string): number => {
    canvas.clearRect(0, 0, 1, 1);
    canvas.fillStyle = '#fff';
    canvas.fillRect(0, 0, 1, 1);
    canvas.fillStyle = colour;
    canvas.fillRect(0, 0, 1, 1);
    const [r = 0, g = 0, b = 0] = canvas.getImageData(0, 0, 1, 1).data;
    return (0.2126 * r + 0.7152 * g + 0.0722 * b) / 255;
  };
  const inked = [
    ...document.querySelectorAll('main :is(h1, h2, h3, p, li, td, th, dt, dd, mn, mi)'),
  ];
  return {
    paper: of(getComputedStyle(document.body).backgroundColor),
    inks: inked
      .filter((element) => element.checkVisibility())
      .map((element) => of(getComputedStyle(element).color)),
  };
}

describe.concurrent.each(titled(pages))('%s', (_, built) => {
  it('prints dark on white from the dark theme too, with nothing beyond the paper', async () => {
    // A4 upright less margins of 15 mm is 180 mm across: 680 px.
    const options = { colorScheme: 'dark', viewport: { width: 680, height: 1010 } } as const;
    await look(addressOf(built), options, async (page) => {
      await wake(page);
      await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
      expect(await page.evaluate(sticksOut)).toEqual([]);
      const { paper, inks } = await page.evaluate(lightness);
      expect(paper).toBeGreaterThan(0.98);
      expect(inks.length).toBeGreaterThan(2);
      expect(Math.max(...inks)).toBeLessThan(0.45);
      const pdf = await page.pdf({ format: 'A4' });
      expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
      expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length).toBeGreaterThan(0);
    });
  });
});
