import { describe, expect, it } from 'vitest';
import { as, deg, feet, inches, mm } from '../../src/formula/quantities.ts';
import { dimensionOf, factorOf, siUnit, UNITS, type Unit } from '../../src/formula/units.ts';
import { expectClose } from '../support/close.ts';

describe('units', () => {
  it('holds the inch and the foot to their definitions', () => {
    expect(factorOf('in')).toBe(0.0254);
    expect(factorOf('ft')).toBe(0.3048);
    expectClose(factorOf('ft') / factorOf('in'), 12, 1e-15);
  });

  it('lists the SI unit of every dimension first', () => {
    const seen = new Set<string>();
    for (const unit of Object.keys(UNITS) as Unit[]) {
      if (!seen.has(dimensionOf(unit))) expect([unit, factorOf(unit)]).toEqual([unit, 1]);
      seen.add(dimensionOf(unit));
    }
  });

  it('goes in and comes out the same', () => {
    expectClose(as(mm(85), 'mm'), 85);
    expectClose(as(feet(6), 'in'), 72);
    expectClose(as(inches(10), 'mm'), 254);
    expectClose(as(deg(180), 'rad'), Math.PI);
  });

  it('names one SI unit for every dimension, as the command line prints it', () => {
    const named = Object.fromEntries(
      (Object.keys(UNITS) as Unit[]).map((unit) => [dimensionOf(unit), siUnit(dimensionOf(unit))]),
    );
    expect(named).toEqual({
      length: 'm', area: 'm2', angle: 'rad', 'solid-angle': 'sr', time: 's', temperature: 'K',
      'reciprocal-temperature': '1/K', illuminance: 'lx', luminance: 'cd/m2', mass: 'kg', force: 'N', torque: 'N·m',
      speed: 'm/s', energy: 'J', power: 'W', current: 'A', voltage: 'V', pixels: 'px', resolution: '1/m', rate: '1/s',
      stops: 'stop', ev: 'EV', 'f-number': '1', iso: '1', money: 'EUR', count: '1', ratio: '1',
    }); // prettier-ignore
  });
});
