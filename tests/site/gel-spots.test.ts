import { describe, expect, it } from 'vitest';
import { addressOf, look, pages, wake } from '../support/site.ts';

const linear = (level: number): number =>
  level <= 0.04045 * 255 ? level / 255 / 12.92 : ((level / 255 + 0.055) / 1.055) ** 2.4;
const luminance = ([r = 0, g = 0, b = 0]: readonly number[]): number =>
  0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);

describe.each([1, 2])('gel spots at %d device pixels a pixel', (ratio) => {
  it('are grey without a gel, orange behind it, and as bright as the beam and the gel leave them', async () => {
    const page = pages.find(({ path }) => path === 'plates/gel/');
    if (!page) throw new Error('There is no page /plates/gel/.');
    const query = '?source=5500K&gel-shift=109mired&transmission=0.71&power=1';
    await look(
      addressOf(page, query),
      { deviceScaleFactor: ratio, viewport: { width: 1280, height: 900 } },
      async (tab) => {
        await wake(tab);
        await tab.locator('.gel-spots').scrollIntoViewIfNeeded();
        await tab.waitForFunction(
          () => (document.querySelector('.gel-swatch') as HTMLElement).style.backgroundColor !== '',
        );
        const spots = await tab.locator('.gel-spots canvas').evaluateAll((all) =>
          all.map((element) => {
            const canvas = element as HTMLCanvasElement;
            // The cloth is 1.2 m wide and 0.9 m high; the beam's edge at 2.0 m is 2 tan 10° off its middle.
            const middle = Math.round((canvas.width * 0.9) / 1.2 / 2);
            const row = canvas.getContext('2d')?.getImageData(0, middle, canvas.width, 1).data;
            const at = (metres: number): number[] => {
              const x = Math.floor(canvas.width * (0.5 + metres / 1.2));
              return [...(row?.slice(4 * x, 4 * x + 3) ?? [])];
            };
            return { middle: at(0), edge: at(2 * Math.tan(Math.PI / 18)) };
          }),
        );
        const [bare, gelled, coloured] = spots;
        if (!bare || !gelled || !coloured) throw new Error('There are not three spots.');
        expect(Math.max(...bare.middle) - Math.min(...bare.middle)).toBeLessThanOrEqual(1);
        // Half at the beam's edge, times cos³ 10° = 0.955 for the cloth's own slant and distance.
        const fall = luminance(bare.edge) / luminance(bare.middle);
        expect(Math.abs(fall / (0.5 * 0.955) - 1)).toBeLessThan(0.03);
        // The gel lets 71 % through, and adaptation keeps luminance nearly.
        const through = luminance(gelled.middle) / luminance(bare.middle);
        expect(Math.abs(through / 0.71 - 1)).toBeLessThan(0.05);
        expect(gelled.middle[0] ?? 0).toBeGreaterThan((gelled.middle[2] ?? 0) + 60);
        expect(coloured.middle[2] ?? 0).toBeGreaterThan((coloured.middle[0] ?? 0) + 60);

        // Balanced to the gelled light it is the gelled spot that is grey, and the bare one blue.
        await tab.locator('[data-choice=balance]').selectOption('gel');
        const colours = await tab
          .locator('.gel-swatch')
          .evaluateAll((all) => all.map((one) => getComputedStyle(one).backgroundColor));
        const [cool = [], grey = []] = colours.map((text) => (text.match(/[\d.]+/g) ?? []).map(Number)); // prettier-ignore
        expect(Math.max(...grey) - Math.min(...grey)).toBeLessThanOrEqual(2);
        expect(cool[2] ?? 0).toBeGreaterThan((cool[0] ?? 0) + 60);
      },
    );
  });
});
