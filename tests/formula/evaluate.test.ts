import { describe, expect, it } from 'vitest';
import { evaluateText, type Evaluation } from '../../src/formula/evaluate.ts';
import { InputError } from '../../src/formula/errors.ts';
import type { Style } from '../../src/formula/show.ts';
import { recordOf } from '../support/records.ts';
import { expectClose } from '../support/close.ts';

/** Runs a line as it would be typed after `evaluate`, without quotes in it. */
const run = (line: string, style?: Style): Evaluation => {
  const [id = '', ...pairs] = line.split(' ');
  return evaluateText(
    recordOf(id),
    pairs.map((pair) => {
      const at = pair.indexOf('=');
      return [pair.slice(0, at), pair.slice(at + 1)] as const;
    }),
    style,
  );
};
const value = (line: string, result: string): unknown => run(line).results[result]?.value;

describe('evaluate', () => {
  it('prints the formula, what was given with defaults, and results in SI with the text a reader sees', () => {
    const { formula, given, results } = run('angle-of-view format=36x24 focal-length=100mm');
    expect(formula).toBe('angle-of-view');
    expect(given).toEqual({
      format: '36x24',
      'focal-length': '100 mm',
      'subject-distance': 'infinity',
      'measured-from': 'lens',
      'lens-offset': '100 mm',
    });
    // 2 atan(36/200)
    expectClose(results['horizontal']?.value as number, 2 * Math.atan(0.18));
    expect(results['horizontal']).toMatchObject({ unit: 'rad', text: '20.4°' });
  });

  it('takes a symbol for an id, and tells case apart', () => {
    expect(value('frame-size format=36x24 f=85mm s=2.21m', 'magnification')).toBeCloseTo(0.04, 14);
    expect(() => run('frame-size format=36x24 F=85mm s=2.21m')).toThrow(/no input “F”/);
  });

  it.each([
    ['angle-of-view format=36x24 focal-length=50mm colour=red', /no input “colour”.*focal-length/],
    ['angle-of-view format=36x24 focal-length=50mm f=85mm', /given twice/],
    ['angle-of-view format=36x24', /needs focal-length/],
    ['angle-of-view format=36x24 focal-length=50', /no unit/],
    ['angle-of-view format=36x24 focal-length=0mm', /between 1 mm and 5000 mm; you typed 0mm/],
    ['angle-of-view format=37 focal-length=50mm', /one of 36x24/],
    ['angle-of-view format=0x24mm focal-length=50mm', /between 1 mm and 1000 mm/],
    [
      'frame-size format=36x24 focal-length=85mm subject-distance=85mm',
      /farther away than the focal length/,
    ],
    [
      'frame-size format=36x24 focal-length=85mm subject-distance=0.3m measured-from=sensor',
      /four focal lengths/,
    ],
    [
      'frame-size format=36x24 focal-length=85mm subject-distance=2,210m',
      /could be 2.21 m or 2210 m/,
    ],
    [
      'backdrop-coverage format=36x24 focal-length=85mm subject-distance=2m backdrop-distance=1m aim-height=1m',
      /needs the camera height/,
    ],
    ['perspective subject-distance=? depth=0.1m', /give exactly one result/],
    [
      'perspective subject-distance=1m depth=0.1m ratio=1.1',
      /also write it as name=\?, for example subject-distance=\?/,
    ],
    ['perspective subject-distance=? depth=? ratio=1.4', /second/],
    ['perspective subject-distance=? depth=0.1m ratio=infinity', /ratio must be finite to solve/],
    ['perspective subject-distance=? depth=0.1m ratio=1.4 compare-ratio=1.1', /one result only/],
    ['frame-size format=? focal-length=85mm subject-distance=2m magnification=0.04', /is a choice/],
    ['spotter-reach frame-width=? body-clearance=0.1m reach=0.5m within-reach=yes', /is a word/],
    [
      'perspective subject-distance=? depth=0.1m ratio=0.5',
      /No subject-distance gives ratio 0.5: between/,
    ],
  ])('refuses %s', (line, message) => {
    expect(() => run(line)).toThrow(InputError);
    expect(() => run(line)).toThrow(message);
  });

  it('changes only the text for imperial readers and decimal commas', () => {
    const line =
      'framing-distance format=36x24 orientation=portrait focal-length=85mm frame-height=0.9m';
    const [plain, imperial, comma] = [
      run(line),
      run(line, { system: 'imperial' }),
      run(line, { decimal: 'comma' }),
    ];
    expect(imperial.results['subject-distance']).toMatchObject({
      value: plain.results['subject-distance']?.value,
      text: '7′ 3″',
    });
    expect(comma.results['subject-distance']?.text).toBe('2,21 m');
    expect(comma.given).toEqual(plain.given);
  });

  it('gives null and "not given" for results whose inputs were left out', () => {
    const { results } = run(
      'room-fit format=36x24 orientation=portrait frame-height=0.9m focal-length=85mm backdrop-distance=1.5m backdrop-clearance=0.3m camera-room=0.8m',
    );
    expect(results['length-needed']?.text).toBe('4.90 m');
    for (const id of ['longest-focal-length', 'spare', 'clear-of-walls', 'light-fits'])
      expect(results[id]).toMatchObject({ value: null, text: 'not given' });
  });

  it('prints infinite results as null, infinite, ∞', () => {
    expect(
      run('frame-size format=36x24 focal-length=85mm subject-distance=infinity').results[
        'frame-height'
      ],
    ).toEqual({
      value: null,
      unit: 'm',
      text: '∞',
      infinite: true,
    });
  });

  it('solves for any input of a monotonic formula, closed inverse or not', () => {
    const { results } = run(
      'backdrop-coverage format=36x24 subject-distance=2.4m backdrop-distance=1.5m focal-length=? view-width=1.2m',
    );
    // w(s + b)/v = 1.2 gives v = 0.117 m, and f = vs/(s + v).
    expectClose(results['focal-length']?.value as number, (0.117 * 2.4) / (2.4 + 0.117), 1e-12);
    expectClose(results['view-width']?.value as number, 1.2);
    expectClose(
      value('perspective subject-distance=? depth=0.1m ratio=1.4', 'subject-distance') as number,
      0.25,
      1e-12,
    );
    expectClose(
      value('angle-of-view format=36x24 focal-length=? horizontal=90deg', 'focal-length') as number,
      0.018,
      1e-12,
    );
  });

  it('says what it was given, and not among it what was asked for', () => {
    const line = 'perspective subject-distance=? depth=0.1m ratio=1.4';
    expect(run(line).given).toEqual({ depth: '0.1 m', ratio: '1.4' });
    expect(
      evaluateText(recordOf('perspective'), [
        ['depth', '0.1 m'],
        ['ratio', '1.4'],
        ['s', ' ? '],
      ]),
    ).toEqual(run(line));
  });

  it('has no roots to list where one value fits', () => {
    expect(run('perspective subject-distance=? depth=0.1m ratio=1.4')).not.toHaveProperty('roots');
  });

  it('shows what it was asked for in four figures, an ISO in three, and in its own unit for imperial readers', () => {
    // (0.25 + 0.1)/0.25 = 1.4; EV 3 at f/2 is 1/2 s, and EV 1 at ISO 100 needs two stops more: ISO 400.
    const distance = run('perspective subject-distance=? depth=0.1m ratio=1.4');
    expect(distance.results['subject-distance']?.text).toBe('0.2500 m');
    const iso = run('exposure-value f-number=f/2 shutter=1/2s iso=? ev-100=1');
    expect(iso.results['iso']).toMatchObject({ unit: '1', text: 'ISO 400' });
    const depth = recordOf('perspective').inputs['depth'];
    if (!depth || !('unit' in depth)) throw new Error('perspective has no depth');
    const inInches = {
      ...recordOf('perspective'),
      inputs: { ...recordOf('perspective').inputs, depth: { ...depth, imperial: 'in' } },
    } as const;
    const asked = [
      ['depth', '?'],
      ['subject-distance', '1 m'],
      ['ratio', '1.0508'],
    ] as const;
    // 0.0508 m is two inches; unless a record says otherwise metres are shown in feet and inches.
    expect(evaluateText(inInches, asked, { system: 'imperial' }).results['depth']?.text).toBe(
      '2.000″',
    );
    expect(evaluateText(inInches, asked).results['depth']?.text).toBe('0.05080 m');
    expect(
      evaluateText(recordOf('perspective'), asked, { system: 'imperial' }).results['depth']?.text,
    ).toBe('2″');
  });

  it('repeats no more than 40 characters of a word it does not know', () => {
    expect(() => run(`perspective ${'q'.repeat(41)}=1m`)).toThrow(`“${'q'.repeat(40)}”`);
  });

  it('reads its own canonical text back to the same results', () => {
    const first = run(
      'backdrop-coverage format=24.3x35.8mm orientation=portrait print-aspect=10:8 f=2.5in s=7ft b=5ft camera-height=80cm',
    );
    const again = evaluateText(recordOf('backdrop-coverage'), Object.entries(first.given));
    expect(again.given).toEqual(first.given);
    for (const id in first.results) {
      const [a, b] = [first.results[id]?.value, again.results[id]?.value];
      if (typeof a === 'number') expectClose(b as number, a);
      else expect(b).toBe(a);
    }
  });
});
