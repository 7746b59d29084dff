import { describe, expect, it } from 'vitest';
import { fNumber } from '../../src/optics/aperture/inputs.ts';
import { focalLength, subjectDistance } from '../../src/optics/lens/inputs.ts';
import { customParts } from '../../src/widgets/parts/names.ts';
import { signsOf } from '../../src/widgets/parts/symbol.ts';
import { trackFor } from '../../src/widgets/parts/track.ts';

describe('a slider', () => {
  it('moves by round steps of the unit shown', () => {
    // 176 mm in about 150 steps: 1 mm. 5.5 m: 2 cm. 18.04 ft: 0.1 ft.
    expect(trackFor(focalLength, 'mm')).toMatchObject({ min: 24, max: 200, step: 1 });
    expect(trackFor(subjectDistance, 'm')).toMatchObject({ min: 0.5, max: 6, step: 0.02 });
    expect(trackFor(subjectDistance, 'ft')).toMatchObject({ min: 1.7, max: 19.6, step: 0.1 });
  });

  it('gives the values it shows, and finds them again', () => {
    const track = trackFor(subjectDistance, 'm');
    expect(track?.value(2.22)).toBe(2.22);
    expect(track?.position(2.21)).toBe(2.21);
    expect(track?.position(Infinity)).toBe(6);
    expect(track?.position(0.01)).toBe(0.5);
  });

  it('goes by the marks of a lens for f-numbers', () => {
    const track = trackFor(fNumber, 'f/');
    const marks = Array.from({ length: 13 }, (_, i) => track?.value(i));
    // Third stops as engraved on lenses, from f/1.4.
    expect(marks).toEqual([1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.1, 3.5, 4, 4.4, 5, 5.6]);
  });
});

describe('a symbol', () => {
  it.each([
    ['f', ['f']],
    ["f'_w", ['f′_w']],
    [String.raw`f_{\max}`, ['f_max']],
    [String.raw`W_{\text{top}}`, ['W_top']],
    [String.raw`\rho/\rho' - 1`, ['ρ', '/', 'ρ′', '−', '1']],
    ['W_b + 2g', ['W_b', '+', '2', 'g']],
  ])('sets %s', (tex, expected) => {
    const said = signsOf(tex).map(
      ({ text, prime, sub }) => text + (prime ? '′' : '') + (sub ? `_${sub}` : ''),
    );
    expect(said).toEqual(expected);
  });

  it('refuses what it cannot set', () => {
    expect(() => signsOf(String.raw`\frac{a}{b}`)).toThrow(/cannot be set/);
  });
});

describe('a written-out choice', () => {
  it('takes its shape from the record’s own example', () => {
    expect(customParts('a size such as 30x20mm')).toEqual({
      join: 'x',
      unit: 'mm',
      example: '30x20mm',
    });
    expect(customParts('a shape such as 4:5')).toEqual({ join: ':', unit: '', example: '4:5' });
    expect(() => customParts('anything')).toThrow(/must end in an example/);
  });
});
