import { expect, it } from 'vitest';
import { draw } from '~/drawing/backdrop-exposure.ts';
import formula from '~/optics/light/backdrop-exposure.ts';
import { overlaps } from './overlaps.ts';
import { paths, scaleOf, sheetOf, texts, wide } from './sheets.ts';

const usual = {
  'key-distance': '1.2m',
  'backdrop-distance': '1.5m',
  'light-distance': '2m',
  'light-stops': '0',
  'gel-loss': '0.5',
  reflectance: '0.18',
};

it('lays out key, child and backdrop along the key’s way', () => {
  const { sheet } = sheetOf(formula, draw, usual);
  const scale = scaleOf(sheet);
  const chain = paths(sheet, 'dimension').filter(
    (line) => line.length === 2 && line[0]?.[1] === line[1]?.[1] && wide(line) / scale > 2.5,
  );
  // 1.2 m to the face and 1.5 m to the backdrop.
  expect(wide(chain.at(-1) ?? []) / scale).toBeCloseTo(2.7, 2);
  expect(texts(sheet)).toEqual(expect.arrayContaining(['1.20 m', '1.50 m', '2.00 m']));
});

it('marks face, spill and spot on one scale of stops', () => {
  const { sheet } = sheetOf(formula, draw, usual);
  const ticks = (role: 'light' | 'shade' | 'emphasis'): number[] =>
    paths(sheet, role)
      .filter((line) => line.length === 2 && line[0]?.[1] === 286)
      .map((line) => line[0]?.[0] ?? 0);
  const [face = 0] = ticks('light');
  const [spill = 0] = ticks('shade');
  const [both = 0] = ticks('emphasis');
  // Spill 2 log2(1.2/2.7) = −2.34; spot alone 2 log2(1.2/2.0) − 0.5 = −1.97; both log2(0.1975 + 0.2546) = −1.15.
  expect((spill - face) / (both - face)).toBeCloseTo(-2.33985 / -1.14541, 3);
  expect(texts(sheet)).toEqual(expect.arrayContaining(['spill −2.34 stops', 'spot −1.15 stops']));
});

it('leaves out light and tone that are not given', () => {
  const { sheet } = sheetOf(formula, draw, {
    'light-distance': '',
    'light-stops': '',
    reflectance: '',
  });
  expect(texts(sheet)).not.toContain('backdrop light');
  expect(texts(sheet)).not.toContain('how it comes out, against middle grey');
  expect(sheet.says).toContain('no light of its own');
});

it('shows white 2.32 stops over grey in the same light', () => {
  const tone = (reflectance: string): number => {
    const { results } = sheetOf(formula, draw, { ...usual, reflectance });
    return Number(results['tone']);
  };
  expect(tone('0.9') - tone('0.18')).toBeCloseTo(2.3219, 3);
  const { sheet } = sheetOf(formula, draw, { ...usual, reflectance: '0.9' });
  const [beside, spot] = ['shade', 'emphasis'].map((role) =>
    paths(sheet, role as 'shade').find((line) => line.length === 2 && line[0]?.[1] === 376),
  );
  const grey = sheet.marks.find((mark) => mark.kind === 'text' && mark.text === 'grey');
  const zero = grey?.kind === 'text' ? grey.x : Number.NaN;
  // Beside the spot −2.34 + 2.32 = −0.02, in it −1.15 + 2.32 = 1.18.
  const unit = ((spot?.[0]?.[0] ?? 0) - zero) / 1.17652;
  expect(((beside?.[0]?.[0] ?? 0) - zero) / unit).toBeCloseTo(-0.0179, 2);
});

it('keeps its words apart', () => {
  for (const key of ['0.3m', '1.2m', '5m'])
    for (const b of ['0m', '0.4m', '1.5m', '5m'])
      for (const light of ['', '0.3m', '2m', '5m'])
        for (const rho of ['', '0.02', '0.9']) {
          const typed = {
            'key-distance': key,
            'backdrop-distance': b,
            'light-distance': light,
            'light-stops': light && '-2',
            reflectance: rho,
          };
          expect(overlaps(sheetOf(formula, draw, typed).sheet), JSON.stringify(typed)).toEqual([]);
        }
});
