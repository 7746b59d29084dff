import { describe, expect, it } from 'vitest';
import books from '../../../src/sitting/day/break-even.ts';
import { expectClose } from '../../support/close.ts';
import { run, value } from '../../optics/aperture/support.ts';

describe('break-even', () => {
  it('480 over 120 less 30 is 6 sittings, 8 bookings at 15 % no-shows', () => {
    const line = 'fixed-cost=480, price=120, variable-cost=30, no-shows=15%';
    // 480/90 = 5.33; 6/0.85 = 7.06
    expect(value(books, line, 'sittings')).toBe(6);
    expect(value(books, line, 'bookings')).toBe(8);
    expect(run(books, line).results['margin']).toEqual({
      value: 90,
      unit: 'EUR',
      text: '90.00 EUR',
    });
  });

  it('takes fee and order for a price, and a bare 0.15 for 15 %', () => {
    const line =
      'fixed-cost=480, sitting-fee=40, average-order=80, variable-cost=30, no-shows=0.15';
    expect(value(books, line, 'bookings')).toBe(8);
    expect(() => run(books, `${line}, price=120`)).toThrow(/exactly one of/);
    // Whatever else is left out counts nought.
    expect(value(books, 'fixed-cost=480, sitting-fee=120, variable-cost=30', 'sittings')).toBe(6);
  });

  it('takes tax out of the price, and the card’s share of all of it', () => {
    // 120/1.2 = 100; 2.5 % of 120 = 3; less 17
    expectClose(
      value(books, 'fixed-cost=0, price=120, variable-cost=17, tax=20%, card-fee=2.5%', 'margin'),
      80,
    );
  });

  it('needs fewer bookings where a deposit is kept', () => {
    const line = 'fixed-cost=480, price=120, variable-cost=30, no-shows=50%';
    // 6 · 90 = 540 over 45 + 0.5 · 90
    expect(value(books, line, 'bookings')).toBe(12);
    expect(value(books, `${line}, deposit=90`, 'bookings')).toBe(6);
  });

  it('exactly paid is paid: 450 over 90 is 5', () => {
    expect(value(books, 'fixed-cost=450, price=120, variable-cost=30', 'sittings')).toBe(5);
    expect(value(books, 'fixed-cost=0, price=120', 'sittings')).toBe(0);
  });

  it('never pays where a sitting costs what it brings', () => {
    const results = run(books, 'fixed-cost=480, price=30, variable-cost=30').results;
    expect(results['sittings']?.infinite).toBe(true);
    expect(results['bookings']?.text).toBe('∞');
  });

  it('says what an hour brings', () => {
    // 10 booked, 8 come: 8 · 90 + 2 · 20 − 480 = 280 over 8 · 1.5 + 10 · 0.5 = 17 h
    const line =
      'fixed-cost=480, price=120, variable-cost=30, no-shows=20%, deposit=20, booked-sittings=10, editing-hours=1.5h, sitting-hours=30min';
    expectClose(value(books, line, 'hourly'), 280 / 17);
    expect(run(books, 'fixed-cost=480, price=120').results['hourly']?.text).toBe('not given');
    expect(() => run(books, 'fixed-cost=1, price=1, booked-sittings=1.5')).toThrow(/counted whole/);
  });

  it('is in the currency its sums name, and in one only', () => {
    const results = run(books, 'fixed-cost=480 usd, price=USD 120, variable-cost=30').results;
    expect(results['margin']?.unit).toBe('USD');
    expect(results['margin']?.text).toBe('90.00 USD');
    expect(run(books, 'fixed-cost=480, price=120, currency=SEK').results['margin']?.unit).toBe(
      'SEK',
    );
    expect(() => run(books, 'fixed-cost=480 USD, price=120 GBP')).toThrow(/one currency/);
    expect(() => run(books, 'fixed-cost=480 USD, price=120, currency=GBP')).toThrow(/USD/);
    expect(() => run(books, 'fixed-cost=480 QQQ, price=120')).toThrow(/ISO 4217/);
    expect(() => run(books, 'fixed-cost=480, price=120, currency=euro')).toThrow(/one of EUR/);
  });
});
