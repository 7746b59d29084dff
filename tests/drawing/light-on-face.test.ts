import { expect, it } from 'vitest';
import { draw } from '~/drawing/light-on-face.ts';
import formula from '~/optics/light/light-on-face.ts';
import { discs } from './path-parts.ts';
import { paths, scaleOf, sheetOf, texts } from './sheets.ts';

it('casts the shadow of the nose to scale', () => {
  const { sheet } = sheetOf(formula, draw, {
    'key-azimuth': '45deg',
    'key-elevation': '30deg',
    'head-turn': '0deg',
    'nose-length': '15mm',
  });
  const [tip] = discs(sheet, 'ground', true);
  const end = discs(sheet, 'emphasis').find(({ radius }) => radius === 3);
  const scale = scaleOf(sheet);
  // 15 mm x tan 45 deg to camera-left; 15 mm x tan 30 deg / cos 45 deg = 12.247 mm down.
  expect(((end?.x ?? 0) - (tip?.x ?? 0)) / scale).toBeCloseTo(-0.015, 6);
  expect(((end?.y ?? 0) - (tip?.y ?? 0)) / scale).toBeCloseTo(0.012247, 6);
  expect(texts(sheet)).toEqual(expect.arrayContaining(['15.0 mm', '12.2 mm', 'loop']));
});

it('sets the key round the head by its azimuth, and up by its elevation', () => {
  const { sheet } = sheetOf(formula, draw, { 'key-azimuth': '-70deg', 'key-elevation': '20deg' });
  const [round, up] = paths(sheet, 'light').filter((line) => line.length === 2);
  /** From the end of a line at the face to its end at the key. */
  const way = (line: [number, number][] = []): [number, number] => {
    const [key, head] = line;
    return [(key?.[0] ?? 0) - (head?.[0] ?? 0), (key?.[1] ?? 0) - (head?.[1] ?? 0)];
  };
  // The camera is below: azimuth counts from downwards, camera-left is left.
  expect(Math.atan2(...way(round))).toBeCloseTo((-70 * Math.PI) / 180, 5);
  const [x, y] = way(up);
  expect(Math.atan2(-y, -x)).toBeCloseTo((20 * Math.PI) / 180, 5);
});

it('puts the key’s image in the eye halfway to the key', () => {
  const { sheet } = sheetOf(formula, draw, { 'key-azimuth': '90deg', 'key-elevation': '0deg' });
  const cornea = discs(sheet, 'object')[0];
  const image = discs(sheet, 'light', true)[0];
  // Halfway to a key at 90 deg is 45 deg: sin 45 deg of the radius to the side.
  expect(((image?.x ?? 0) - (cornea?.x ?? 0)) / (cornea?.radius ?? 1)).toBeCloseTo(0.70711, 4);
  expect(image?.y).toBeCloseTo(cornea?.y ?? 0, 6);
});

it('lets a shadow that never ends run off the face', () => {
  const { sheet } = sheetOf(formula, draw, { 'key-azimuth': '120deg', 'head-turn': '0deg' });
  expect(discs(sheet, 'emphasis').filter(({ radius }) => radius === 3)).toEqual([]);
  expect(sheet.says).toContain('runs off the face');
});
