import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { complete } from '../../src/formula/read.ts';
import { idOf, isChoice, type QuantityInput } from '../../src/formula/record.ts';
import { factorOf } from '../../src/formula/units.ts';
import { readQuery } from '../../src/widgets/parts/read-link.ts';
import { startsOf } from '../../src/formula/starts.ts';
import { onlyInPlay, writeQuery } from '../../src/widgets/parts/starts.ts';
import { hostileQueries } from '../support/hostile.ts';
import { oneWay } from '../support/records.ts';
import { calculator, calculators } from './calculators.ts';

const quantity = (input: QuantityInput): fc.Arbitrary<unknown> => {
  const [min, max] = input.span ?? input.range;
  const one = fc
    .double({ min, max: Math.min(max, 1e6), noNaN: true })
    .map((x) => Number(x.toPrecision(6)) * factorOf(input.unit));
  return input.list ? fc.array(one, { minLength: input.list.min, maxLength: input.list.max }) : one;
};

const { formula } = calculator('framing-distance');
const good =
  'format=36x24&orientation=portrait&print-aspect=none&focal-length=85mm&frame-height=0.9m';

describe('a link', () => {
  it('holds every input by evaluate’s ids and text, without needless spaces', () => {
    expect(writeQuery(formula, startsOf(formula))).toBe(good);
  });

  it.each(calculators)('of %s brings back what it was written from', (_name, { formula: any }) => {
    const values = fc.record(
      Object.fromEntries(
        Object.entries(any.inputs)
          .filter(([, input]) => input.when === undefined)
          .map(([key, input]) => [
            key,
            isChoice(input) ? fc.constantFrom(...Object.values(input.choices)) : quantity(input),
          ]),
      ),
    );
    fc.assert(
      fc.property(values, fc.nat(5), (all, way) => {
        const given = oneWay(any, all, way);
        const loaded = readQuery(any, `?${writeQuery(any, given)}`);
        // Values that do not go together are another test's business.
        if (loaded?.notices.some((notice) => notice.includes('do not go together'))) return;
        expect(loaded?.notices).toEqual([]);
        for (const [key, value] of Object.entries(given)) {
          const back = loaded?.values[key];
          if (typeof value === 'number') expect(back).toBeCloseTo(value, 12);
          else if (Array.isArray(value))
            value.forEach((part: number, i) => {
              expect((back as number[])[i]).toBeCloseTo(part, 12);
            });
          else expect(back).toEqual(value);
        }
      }),
    );
  });

  it('takes evaluate’s defaults for what it leaves out, not the page’s start', () => {
    const { formula: angle } = calculator('angle-of-view');
    const loaded = readQuery(angle, 'format=36x24&focal-length=50mm');
    expect(loaded?.notices).toEqual([]);
    expect(loaded?.values['s']).toBe(Infinity);
    expect(
      readQuery(formula, 'focal-length=50mm&frame-height=1m&format=36x24')?.values['orientation'],
    ).toBe('landscape');
  });

  it('shows the start where it holds no key of the formula, and says so', () => {
    for (const query of [
      '?utm=1',
      'f=85mm',
      '__proto__=1',
      'constructor=x&toString=y',
      'a=%E0%A4%A&=&&',
    ]) {
      const loaded = readQuery(formula, query);
      expect(loaded?.values).toEqual(startsOf(formula));
      expect(loaded?.notices).toHaveLength(1);
      expect(loaded?.notices[0]).toMatch(
        /^The link holds “.*”, which this plate does not know; it shows its start\.$/,
      );
    }
    for (const query of ['', '?']) expect(readQuery(formula, query)).toBeUndefined();
  });

  const start = startsOf(formula);
  // The part that is hostile, the key it concerns, and what the notice must say.
  const hostile: readonly (readonly [string, string, RegExp])[] = [
    ['frame-height=', 'H', /gives no frame height/],
    ['frame-height=%20%20', 'H', /gives no frame height/],
    ['frame-height=1m&frame-height=2m', 'H', /gives frame height 2 times/],
    ['frame-height=1e309m', 'H', /frame height could not be used: it must be/],
    [
      'frame-height=99999999m',
      'H',
      /frame height could not be used: it must be between .*; the link says 99999999m/,
    ],
    ['frame-height=-1m', 'H', /frame height could not be used: it must be/],
    ['frame-height=0m', 'H', /frame height could not be used: it must be/],
    ['frame-height=NaN', 'H', /frame height could not be used: it must be/],
    ['frame-height=Infinity', 'H', /frame height could not be used: it must be/],
    ['frame-height=1', 'H', /has no unit/],
    ['frame-height=1,000m', 'H', /could be 1 m or 1000 m/],
    [
      'frame-height=%3Cscript%3Ealert(1)%3C/script%3E',
      'H',
      /frame height could not be used: it must be/,
    ],
    ['frame-height=javascript:alert(1)', 'H', /frame height could not be used: it must be/],
    [`frame-height=${'9'.repeat(500)}m`, 'H', /too long/],
    ['frame-height=%', 'H', /frame height could not be used: it must be/],
    ['frame-height=%00', 'H', /frame height could not be used: it must be|gives no frame height/],
    ['frame-height=%E2%80%AE1m', 'H', /^$/],
    ['format=hasOwnProperty', 'format', /format could not be used: it must be one of/],
    ['format=__proto__', 'format', /format could not be used: it must be one of/],
    ['format=0x0mm', 'format', /format could not be used/],
    [
      'orientation=sideways',
      'orientation',
      /orientation could not be used: it must be one of landscape, portrait; the link says sideways/,
    ],
    ['print-aspect=1:1000', 'aspect', /print aspect could not be used/],
  ];
  it.each(hostile)('survives %s', (part, key, notice) => {
    const id = part.slice(0, part.indexOf('='));
    const rest = good
      .split('&')
      .filter((pair) => !pair.startsWith(`${id}=`))
      .join('&');
    const loaded = readQuery(formula, `${rest}&${part}`);
    expect(loaded?.notices.join(' ')).toMatch(notice);
    if (notice.source === '^$') expect(loaded?.values[key]).toBe(1);
    else {
      expect(loaded?.notices.join(' ')).toMatch(/start value stands there instead/);
      expect(loaded?.values[key]).toEqual(start[key]);
    }
    expect(() => complete(formula, loaded?.values ?? {})).not.toThrow();
  });

  it('calls fields by their names where values do not go together', () => {
    const { formula: circle } = calculator('circle-of-confusion');
    const loaded = readQuery(
      circle,
      'format=36x24&print-height=20cm&enlargement=8&viewing-distance=25cm&acuity=3arcmin',
    );
    expect(loaded?.notices).toEqual([
      'The link’s values do not go together: This plate needs exactly one of: print height, or enlargement. The plate shows its start.',
    ]);
  });

  it('names the keys it does not know, and uses the rest', () => {
    const loaded = readQuery(
      formula,
      `${good.replace('85mm', '50mm')}&aperture=f/4&__proto__=x&${encodeURIComponent('<img>')}=1`,
    );
    expect(loaded?.values['f']).toBe(0.05);
    expect(loaded?.notices).toEqual([
      'The link also holds “aperture”, “__proto__”, “<img>”, which this plate does not know.',
    ]);
  });

  it('shows the whole start where the values do not go together', () => {
    const { formula: size } = calculator('frame-size');
    const loaded = readQuery(size, 'format=36x24&focal-length=85mm&subject-distance=0.05m');
    expect(loaded?.values).toEqual(startsOf(size));
    expect(loaded?.notices).toHaveLength(1);
    expect(loaded?.notices[0]).toMatch(/do not go together: The subject must be farther away/);
  });

  it.each(calculators)('of %s gives way to the start, with a notice', (_name, { formula: any }) => {
    // An address writes fifteen figures.
    const figures = (values: object | undefined): object =>
      Object.fromEntries(
        Object.entries(values ?? {}).map(([key, value]: [string, unknown]) => [
          key,
          typeof value === 'number' ? Number(value.toPrecision(14)) : value,
        ]),
      );
    for (const query of hostileQueries(any)) {
      const loaded = readQuery(any, query);
      expect(figures(loaded?.values), query.slice(0, 300)).toEqual(figures(startsOf(any)));
      expect(loaded?.notices, query.slice(0, 300)).toHaveLength(1);
    }
  });

  it('refuses a megabyte without reading it', () => {
    const loaded = readQuery(formula, `frame-height=${'1'.repeat(1_000_000)}`);
    expect(loaded?.values).toEqual(start);
    expect(loaded?.notices).toHaveLength(1);
  });

  it('survives any text at all', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...calculators),
        fc.array(fc.tuple(fc.nat(20), fc.string({ unit: 'binary' })), { maxLength: 8 }),
        ([, { formula: any }], parts) => {
          const ids = Object.values(any.inputs).map(idOf);
          const query = parts
            .map(([at, text]) => `${ids[at] ?? text}=${encodeURIComponent(text.toWellFormed())}`)
            .join('&');
          const loaded = readQuery(any, query);
          if (loaded)
            expect(() => any.compute(complete(any, onlyInPlay(any, loaded.values)))).not.toThrow();
        },
      ),
    );
  });
});
