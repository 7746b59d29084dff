import { writeNumber } from '../formula/notation/write.ts';
import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula, { lightOf } from '../optics/light/lighting-ratio.ts';
import { corners, pen, WIDTH } from './pen.ts';
import type { Sheet } from './sheet.ts';
import { stopScale } from './stop-scale.ts';
import { words } from './words.ts';

const [LIT, SHADOW, THICK, SCALE] = [24, 82, 28, 184];
const [LEFT, LENGTH] = [8, WIDTH - 16];

/** What each side of the face gets, as bars of one scale; under them what the meter reads of each light and of all. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { K, F } = lightOf(given as unknown as Parameters<typeof formula.compute>[0]);
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const long = (light: number): number => (light / (K + F)) * LENGTH;
  const read = (light: number): string =>
    showResult(formula.outputs.total, Math.sqrt(light), style);

  on.text(LEFT, LIT - 8, 'lit side: key and fill');
  on.area('light', corners([LEFT, LIT, LEFT + long(K), LIT + THICK]));
  on.ring('object', corners([LEFT, LIT, LEFT + LENGTH, LIT + THICK]));
  if (F > 0)
    on.line('object', [
      [LEFT + long(K), LIT],
      [LEFT + long(K), LIT + THICK],
    ]);
  if (long(K) > 40) on.text(LEFT + long(K) / 2, LIT + 18, 'key', 'middle');
  if (long(F) > 40) on.text(LEFT + long(K) + long(F) / 2, LIT + 18, 'fill', 'middle');
  on.text(LEFT, SHADOW - 8, 'shadow side: fill alone');
  if (F > 0) {
    on.area('shade', corners([LEFT, SHADOW, LEFT + long(F), SHADOW + THICK]));
    on.ring('object', corners([LEFT, SHADOW, LEFT + long(F), SHADOW + THICK]));
  }
  const room = LENGTH - long(F) > 90;
  on.text(
    room ? LEFT + long(F) + 8 : LEFT + LENGTH,
    room ? SHADOW + 18 : SHADOW - 8,
    F > 0 ? `${show('ratio')} to 1` : 'no light',
    room ? 'start' : 'end',
    'emphasis',
  );

  const rows = [
    ['key alone', K],
    ...(F > 0 ? ([['fill alone', F]] as const) : []),
    ['all on', K + F],
  ] as const;
  const { at } = stopScale(
    on,
    SCALE,
    rows.map(([, light]) => Math.sqrt(light)),
  );
  for (const [name, light] of rows)
    on.line(name === 'all on' ? 'emphasis' : 'object', [
      [at(Math.sqrt(light)), SCALE - 12],
      [at(Math.sqrt(light)), SCALE],
    ]);
  words(
    on,
    SCALE - 34,
    rows.map(([name, light]) => [
      at(Math.sqrt(light)),
      `${name} ${read(light)}`,
      name === 'all on' ? 'emphasis' : undefined,
    ]),
  );
  return {
    width: WIDTH,
    height: SCALE + 32,
    marks: on.marks,
    says: `Two bars to one scale: the lit side gets key and fill, the shadow side the fill alone, ${F > 0 ? `${show('ratio')} to 1` : 'which is nothing'}. On the meter: ${rows.map(([name, light]) => `${name} ${read(light)}`).join(', ')}.`,
    table: {
      head: ['light', 'reading', 'share of the lit side'],
      rows: rows.map(([name, light]) => [
        name,
        read(light),
        `${writeNumber((light / (K + F)) * 100, { decimals: 0 }, style)} %`,
      ]),
    },
  };
};
