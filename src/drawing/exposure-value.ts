import { writeQuantity } from '../formula/notation/write.ts';
import type { FNumber } from '../formula/quantities.ts';
import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/aperture/exposure-value.ts';
import { disc } from './disc.ts';
import { corners, pen, WIDTH } from './pen.ts';
import type { Sheet } from './sheet.ts';
import { stop, threeStops } from './stops.ts';
import { words } from './words.ts';

const [SCALE, MIDDLE, BAR] = [48, 108, 166];
const STEP = 70;

/** The setting on a scale of EV, and what lets in as much light: openings to one scale, and times to one scale. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { N, t, S } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const time = (seconds: number): string => writeQuantity(seconds, 's', { fraction: true }, style);

  // One more to the right is half the light.
  const places = [results['ev'], results['ev100']].filter((x) => typeof x === 'number');
  const low = Math.floor(Math.min(...places)) - 2;
  const high = Math.ceil(Math.max(...places)) + 2;
  const unit = (WIDTH - 32) / (high - low);
  const x = (ev: number): number => 16 + (ev - low) * unit;
  on.line('object', [
    [8, SCALE],
    [WIDTH - 8, SCALE],
  ]);
  const every = Math.ceil(26 / unit);
  for (let ev = low; ev <= high; ev += 1) {
    const named = ev % every === 0;
    on.line(named ? 'object' : 'dimension', [
      [x(ev), SCALE],
      [x(ev), SCALE + (named ? 8 : 5)],
    ]);
    if (named) on.text(x(ev), SCALE + 22, writeQuantity(ev, '1', { decimals: 0 }, style), 'middle');
  }
  for (const ev of places)
    on.line('emphasis', [
      [x(ev), SCALE - 12],
      [x(ev), SCALE],
    ]);
  words(on, 12, [
    [x(Number(results['ev'])), `set ${show('ev')}`, 'emphasis'],
    ...(S === undefined ? [] : [[x(Number(results['ev100'])), `light ${show('ev100')}`] as const]),
  ]);

  // Wider and shorter to the left, narrower and longer to the right.
  const wider = threeStops(N)[0];
  const narrower = threeStops(N)[2];
  const settings = [
    [threeStops(wider)[0], t / 4],
    [wider, t / 2],
    [N, t],
    [narrower, t * 2],
    [threeStops(narrower)[2], t * 4],
  ] as readonly (readonly [FNumber, number])[];
  settings.forEach(([aperture, seconds], i) => {
    const middle = WIDTH / 2 + (i - 2) * STEP;
    const role = i === 2 ? 'emphasis' : undefined;
    disc(on, 'light', middle, MIDDLE, ((N / aperture) * 18) / 2, true);
    on.text(middle, MIDDLE + 36, stop(aperture, style), 'middle', role);
    const half = ((seconds / t) * 15) / 2;
    on.area('shade', corners([middle - half, BAR, middle + half, BAR + 12]));
    on.text(middle, BAR + 28, time(seconds), 'middle', role);
  });
  return {
    width: WIDTH,
    height: BAR + 36,
    marks: on.marks,
    says: `${stop(N, style)} and ${time(t)} on a scale of stops: ${show('ev')}${S === undefined ? '' : `, right for a light of ${show('ev100')} at ISO 100`}. Under it settings a stop apart that let in as much: the opening’s area times the time stays the same.`,
    table: {
      head: ['f-number', 'shutter'],
      rows: settings.map(([aperture, seconds]) => [stop(aperture, style), time(seconds)]),
    },
  };
};
