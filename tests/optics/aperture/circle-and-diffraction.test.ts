import { describe, expect, it } from 'vitest';
import circle from '../../../src/optics/aperture/circle-of-confusion.ts';
import diffraction from '../../../src/optics/aperture/diffraction.ts';
import { expectClose } from '../../support/close.ts';
import { run, value } from './support.ts';

describe('circle of confusion', () => {
  it('is the eye’s angle on the print, taken back by the enlargement', () => {
    // Kodak's 2 arcminutes at the perspective-correct distance of a 50 mm lens: 50 mm × tan 2′.
    expectClose(
      value(circle, 'format=36x24, enlargement=1, viewing-distance=50mm, acuity=2arcmin', 'circle'),
      0.05 * Math.tan((2 * Math.PI) / 10800),
      1e-6,
    );
    expectClose(
      value(
        circle,
        'format=36x24, enlargement=8, viewing-distance=25cm, acuity=2arcmin',
        'circle',
      ) * 8,
      0.25 * Math.tan((2 * Math.PI) / 10800),
      1e-6,
    );
  });

  it('takes the print’s height over the format’s shorter side for the enlargement', () => {
    expectClose(
      value(
        circle,
        'format=36x24, print-height=24cm, viewing-distance=25cm, acuity=3arcmin',
        'circle',
      ),
      value(
        circle,
        'format=36x24, enlargement=10, viewing-distance=25cm, acuity=3arcmin',
        'circle',
      ),
    );
  });

  it('says what share of the diagonal it is', () => {
    const { results } = run(
      circle,
      'format=36x24, enlargement=10, viewing-distance=25cm, acuity=3arcmin',
    );
    expectClose(
      (results['circle']?.value as number) * (results['diagonal-divisor']?.value as number),
      Math.sqrt(0.036 ** 2 + 0.024 ** 2),
    );
  });

  it('wants the print one way only', () => {
    expect(() => run(circle, 'format=36x24, viewing-distance=25cm, acuity=3arcmin')).toThrow(
      /exactly one of: print-height, or enlargement/,
    );
    expect(() =>
      run(
        circle,
        'format=36x24, enlargement=8, print-height=20cm, viewing-distance=25cm, acuity=3arcmin',
      ),
    ).toThrow(/exactly one/);
  });
});

describe('diffraction', () => {
  it('takes over at f/22.4 for a circle of 0.030 mm at 550 nm, far subject', () => {
    expectClose(
      value(diffraction, 'wavelength=550nm, circle=0.030mm', 'limit-f-number'),
      0.00003 / (2.44 * 550e-9),
    );
    expect(
      run(diffraction, 'wavelength=550nm, circle=0.030mm').results['limit-f-number']?.text,
    ).toBe('f/22.4');
    expect(
      run(diffraction, 'wavelength=550nm, circle=0.030mm').results['airy-diameter']?.text,
    ).toBe('not given');
  });

  it('fills the circle exactly at its limit, and the pixel at the pixel’s', () => {
    const limits = run(
      diffraction,
      'wavelength=550nm, circle=0.030mm, pixel-pitch=6um, magnification=0.1, pupil-magnification=0.8',
    ).results;
    const at = (N: unknown): ReturnType<typeof run>['results'] =>
      run(
        diffraction,
        `wavelength=550nm, circle=0.030mm, pixel-pitch=6um, magnification=0.1, pupil-magnification=0.8, f-number=${String(N)}`,
      ).results;
    expectClose(at(limits['limit-f-number']?.value)['circles']?.value as number, 1);
    expectClose(at(limits['pixel-limit-f-number']?.value)['pixels']?.value as number, 1);
  });

  it('grows with f-number, wavelength and close focus', () => {
    const airy = (line: string): number => value(diffraction, line, 'airy-diameter');
    const one = airy('wavelength=500nm, f-number=8');
    expectClose(one, 2.44 * 500e-9 * 8);
    expectClose(airy('wavelength=500nm, f-number=16') / one, 2);
    expectClose(airy('wavelength=600nm, f-number=8') / one, 1.2);
    expectClose(airy('wavelength=500nm, f-number=8, magnification=1') / one, 2);
    expectClose(
      airy('wavelength=500nm, f-number=8, magnification=1, pupil-magnification=0.5') / one,
      3,
    );
    expectClose(airy('wavelength=500nm, f-number=5.6, marks=exact'), 2.44 * 500e-9 * 2 ** 2.5);
  });
});
