import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import print, { cropOf } from '../../../src/sitting/print/print-size.ts';
import view from '../../../src/sitting/print/viewing-distance.ts';
import wrap from '../../../src/sitting/print/wrap-allowance.ts';
import { expectClose } from '../../support/close.ts';
import { run, value } from '../../optics/aperture/support.ts';

const perInch = 1 / 0.0254;

describe('print size', () => {
  it('spreads the cropped file over the print: 6000 by 4000 for 25 by 20 in', () => {
    // The print is 5:4, so 5000 by 4000 are left: 200 px/in; 1000 by 4000 are cropped away.
    const line = 'pixel-width=6000px, pixel-height=4000px, print-width=25in, print-height=20in';
    expectClose(value(print, line, 'resolution'), 200 * perInch);
    expectClose(value(print, line, 'pixels-lost'), 4_000_000);
  });

  it('crops to a shape first, turned as the file is', () => {
    const upright =
      'pixel-width=4000px, pixel-height=6000px, print-aspect=4:5, wanted-resolution=300px/in';
    // 4000 by 5000 at 300 px/in: 13.33 by 16.67 in
    expectClose(value(print, upright, 'largest-width'), (4000 / 300) * 0.0254);
    expectClose(value(print, upright, 'largest-height'), (5000 / 300) * 0.0254);
    expectClose(value(print, upright, 'pixels-lost'), 4_000_000);
    expect(run(print, upright).results['resolution']?.text).toBe('not given');
  });

  it('counts what mat and frame hide as lost', () => {
    // 4000 by 5000 on 40 by 50 cm: 100 px/cm; 1 cm hidden all round leaves 3800 by 4800.
    const line =
      'pixel-width=4000px, pixel-height=5000px, print-width=40cm, print-height=50cm, hidden-edge=10mm';
    expectClose(value(print, line, 'pixels-lost'), 20_000_000 - 3800 * 4800);
    expect(() => run(print, line.replace('10mm', '200mm'))).toThrow(/hides the whole print/);
  });

  it('never crops to more than there is, and always to the print’s own shape', () => {
    const side = fc.double({ min: 0.05, max: 2, noNaN: true });
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e5 }),
        fc.integer({ min: 1, max: 1e5 }),
        side,
        side,
        (W, H, w, h) => {
          const [across, up] = cropOf({ W, H, aspect: null, w, h } as never);
          expect(across).toBeLessThanOrEqual(W * (1 + 1e-12));
          expect(up).toBeLessThanOrEqual(H * (1 + 1e-12));
          expectClose(across / up, w / h, 1e-9);
          expect(Math.max(across / W, up / H)).toBeGreaterThan(1 - 1e-12);
        },
      ),
    );
  });

  it('wants both sides of the print or neither', () => {
    expect(() => run(print, 'pixel-width=1px, pixel-height=1px, print-width=1cm')).toThrow(
      /at most one of/,
    );
  });
});

describe('viewing distance', () => {
  it('one minute of arc at 100 in is 34.4 px/in', () => {
    // 1/tan 1′ = 3437.75
    expectClose(value(view, 'viewing-distance=100in', 'resolution'), 34.3775 * perInch, 1e-5);
  });

  it('says the least pixels of a print and whether the file has them', () => {
    const line = 'viewing-distance=100in, print-width=10in, print-height=20in';
    expectClose(value(view, line, 'least-width'), 343.775, 1e-5);
    expectClose(value(view, line, 'least-height'), 687.55, 1e-5);
    expect(value(view, `${line}, pixel-width=344px, pixel-height=688px`, 'suffices')).toBe(true);
    expect(value(view, `${line}, pixel-width=344px, pixel-height=687px`, 'suffices')).toBe(false);
    expect(run(view, line).results['suffices']?.text).toBe('not given');
  });

  it('twice the distance or half as sharp an eye needs half the pixels', () => {
    const one = value(view, 'viewing-distance=1m', 'resolution');
    expectClose(value(view, 'viewing-distance=2m', 'resolution'), one / 2);
    expectClose(value(view, 'viewing-distance=1m, acuity=2arcmin', 'resolution'), one / 2, 1e-6);
  });
});

describe('wrap allowance', () => {
  const set = 'front-width=40cm, front-height=50cm, edge-depth=20mm, fold-over=15mm';

  it('adds edge and fold on both sides: 47 by 57 cm', () => {
    expectClose(value(wrap, `${set}, edge=wrapped`, 'file-width'), 0.47);
    expectClose(value(wrap, `${set}, edge=mirrored`, 'file-height'), 0.57);
    expectClose(value(wrap, `${set}, edge=plain`, 'file-width'), 0.4);
  });

  it('counts the pixels, and leaves a border for what sits off the middle', () => {
    const line = `${set}, edge=wrapped, resolution=100px/cm, drift=5mm`;
    expectClose(value(wrap, line, 'file-pixel-width'), 4700);
    expectClose(value(wrap, line, 'safe-width'), 0.39);
    expectClose(value(wrap, line, 'safe-height'), 0.49);
    expect(() => run(wrap, `${set}, edge=plain, drift=250mm`)).toThrow(/nothing of the front/);
  });
});
