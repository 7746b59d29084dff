import type { Quantity, Time } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';

/** Frames are counted by the minute: a number alone is so many. */
const perMinute = (text: string): number | undefined => {
  const [all, number] = /^ *([\d.e+-]+) *$/.exec(text) ?? [];
  const rate = Number(number);
  return all === undefined || !(rate >= 0.01 && rate <= 100000) ? undefined : rate / 60;
};

export default defineFormula({
  id: 'recycle-budget',
  title: 'Keeping up with the flash',
  tex: String.raw`w = \max \left( 0\,,\; t_r - \frac{1}{\nu} \right)`,
  spoken: 'w equals the larger of nought and t r minus one over nu',
  inputs: {
    energy: {
      name: 'flash energy',
      tex: 'E',
      unit: 'J',
      range: [0.1, 100000],
      span: [1, 2400],
      start: 25,
      optional: true,
      means: 'what one flash takes at this power',
    },
    recycle: {
      name: 'recycle time',
      tex: 't_r',
      unit: 's',
      range: [0.001, 1000],
      span: [0.05, 10],
      start: 0.6,
      means: 'how long until it is ready again at this power',
    },
    rate: {
      name: 'frame rate',
      tex: String.raw`\nu`,
      unit: '1/min',
      range: [0.01, 100000],
      span: [1, 240],
      start: 20,
      read: perMinute,
      means: 'frames a minute you take',
    },
  },
  outputs: {
    wait: {
      name: 'wait',
      tex: 'w',
      unit: 's',
      digits: { significant: 2 },
      means: 'how much too soon the next frame comes; 0 if the flash is ready',
    },
    burst: {
      name: 'burst',
      unit: 'count',
      digits: { decimals: 0 },
      means: 'frames in a row with full flash: one if the next comes too soon, else without end',
    },
    hour: {
      name: 'energy',
      unit: 'J',
      digits: { significant: 3 },
      means: 'what the flashes take in an hour at this pace',
    },
    flashes: {
      name: 'rate',
      unit: '1/s',
      digits: { significant: 2 },
      means: 'flashes a second; from 3 a second up they can harm photosensitive people',
    },
  },
  compute({ energy, recycle, rate }) {
    const interval = 1 / rate;
    const ready = interval >= recycle * (1 - 1e-12);
    const flashes = ready ? rate : 1 / recycle;
    return {
      wait: (ready ? 0 : recycle - interval) as Time,
      burst: (ready ? Infinity : 1) as Quantity<'count'>,
      hour: (energy === undefined ? undefined : energy * flashes * 3600) as
        Quantity<'energy'> | undefined,
      flashes: flashes as Quantity<'rate'>,
    };
  },
  slips: {
    'minutes-as-seconds': {
      compute: ({ recycle, rate }) => ({
        wait: Math.max(0, recycle - 1 / (60 * rate)) as Time,
      }),
      say: 'That takes frames a minute for frames a second.',
    },
  },
  worked: {
    tex: String.raw`w = \max \left( 0\,,\; \val{recycle} - \val{interval} \right) = \val{w}`,
    values: ({ recycle, rate }, { wait }) => ({
      recycle: { value: recycle, unit: 's', digits: { significant: 3 } },
      interval: { value: 1 / rate, unit: 's', digits: { significant: 3 } },
      w: { value: wait, unit: 's', digits: { significant: 2 } },
    }),
  },
  symbols: [],
  model: 'Even frames; a frame taken before the flash is ready is lost to it.',
  breaks:
    'Ready lamps come on at about nine tenths; batteries slow down as they empty; heads that overheat lengthen the time by themselves.',
  sources: ['wcag-three-flashes', 'epilepsy-ireland-photosensitive'],
});
