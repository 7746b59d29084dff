import { InputError } from '../../formula/errors.ts';
import { parseQuantity } from '../../formula/notation/quantity.ts';
import { currencyCode, partMoney } from '../../formula/notation/money.ts';
import type { Quantity, Ratio } from '../../formula/quantities.ts';
import { defineFormula, type ChoiceInput, type QuantityInput } from '../../formula/record.ts';

type Money = Quantity<'money'>;
type Count = Quantity<'count'>;

const MOST = 1e12;

const sum = {
  unit: 'EUR',
  range: [0, MOST],
  span: [0, 500],
  read: (text) => {
    const parts = partMoney(text);
    return parts === undefined
      ? undefined
      : parseQuantity(parts.number, {
          name: 'sum',
          unit: 'EUR',
          range: [0, MOST],
          example: 120,
          stored: true,
        });
  },
} as const satisfies Partial<QuantityInput>;

/** The currencies a page offers; any other of ISO 4217 can be written out. */
const OFFERED =
  'EUR USD GBP CHF JPY AUD BRL CAD CLP CNY COP CZK DKK HKD HUF IDR ILS INR ISK KRW MAD MXN MYR NGN NOK NZD PEN PHP PLN RON SEK SGD THB TRY TWD UAH VND ZAR';

const currency: ChoiceInput<string> = {
  name: 'currency',
  choices: Object.fromEntries(OFFERED.split(' ').map((code) => [code, code])),
  custom: {
    form: 'three letters of the ISO list, such as SEK',
    read: (text) => (/^[a-z]{3}$/i.test(text) ? currencyCode(text) : undefined),
    write: (code) => code,
  },
  start: 'EUR',
  default: 'EUR',
  means: 'what the sums are in',
};

interface Books {
  readonly fee: Money | undefined;
  readonly order: Money;
  readonly price: Money | undefined;
  readonly variable: Money;
  readonly tax: Ratio;
  readonly card: Ratio;
}

/** What one sitting that takes place leaves towards the fixed cost. */
const contribution = ({ fee, order, price, variable, tax, card }: Books): number => {
  const paid = price ?? (fee ?? 0) + order;
  return paid / (1 + tax) - paid * card - variable;
};

export default defineFormula({
  id: 'break-even',
  title: 'When a day pays',
  tex: String.raw`n = \left\lceil \frac{F}{M} \right\rceil`,
  spoken: 'n equals F over M, rounded up',
  inputs: {
    fixed: {
      ...sum,
      name: 'fixed cost',
      tex: 'F',
      span: [0, 5000],
      start: 480,
      means: 'set, rent, helper and travel of the day, whoever comes',
    },
    fee: {
      ...sum,
      name: 'sitting fee',
      tex: 'p_s',
      start: 40,
      optional: true,
      means: 'what each sitting pays to come',
    },
    order: {
      ...sum,
      name: 'average order',
      tex: 'p_o',
      start: 80,
      default: 0,
      means: 'what each orders on average, besides the fee',
    },
    price: {
      ...sum,
      name: 'price',
      tex: 'p',
      start: 120,
      optional: true,
      means: 'or fee and order together',
    },
    variable: {
      ...sum,
      name: 'variable cost',
      tex: 'v',
      start: 30,
      default: 0,
      means: 'prints, paper and what else each sitting uses up',
    },
    tax: {
      name: 'tax',
      tex: String.raw`\tau`,
      unit: '%',
      range: [0, 100],
      span: [0, 30],
      start: 0,
      default: 0,
      means: 'sales tax contained in the price, on top of the net: 20 % of 120 leaves 100',
    },
    card: {
      name: 'card fee',
      tex: 'c',
      unit: '%',
      range: [0, 50],
      span: [0, 10],
      start: 0,
      default: 0,
      means: 'what the card company keeps of the price',
    },
    noShows: {
      name: 'no-shows',
      tex: 'q',
      unit: '%',
      range: [0, 99],
      span: [0, 50],
      start: 15,
      default: 0,
      means: 'the share of bookings that do not come',
    },
    deposit: {
      ...sum,
      name: 'deposit',
      tex: 'd',
      span: [0, 200],
      start: 0,
      default: 0,
      means: 'what is kept of a booking that does not come, net',
    },
    booked: {
      name: 'booked sittings',
      tex: 'b',
      unit: 'count',
      range: [0, 1e6],
      span: [0, 30],
      start: 9,
      default: 0,
      means: 'bookings on the list',
    },
    editing: {
      name: 'editing hours',
      tex: 'h_e',
      unit: 'h',
      range: [0, 1000],
      span: [0, 8],
      start: 1.5,
      default: 0,
      means: 'work on the pictures of one sitting',
    },
    sitting: {
      name: 'sitting hours',
      tex: 'h_s',
      unit: 'h',
      range: [0, 24],
      span: [0, 4],
      start: 0.75,
      default: 0,
      means: 'time on the set for one booking, come or not',
    },
    currency,
  },
  ways: [{ groups: [['sitting-fee'], ['price']] }],
  outputs: {
    sittings: {
      name: 'sittings',
      tex: 'n',
      unit: 'count',
      digits: { decimals: 0 },
      means: 'whole sittings that pay the fixed cost',
    },
    bookings: {
      name: 'bookings',
      unit: 'count',
      digits: { decimals: 0 },
      means: 'bookings to take so that as much comes in, those who stay away counted',
    },
    margin: {
      name: 'margin',
      tex: 'M',
      unit: 'EUR',
      digits: { decimals: 2 },
      means: 'what one sitting leaves after tax, card fee and its own cost',
    },
    hourly: {
      name: 'hourly',
      unit: 'EUR',
      digits: { decimals: 2 },
      means: 'the day’s result for each hour worked, with these bookings',
    },
  },
  compute(given) {
    const { fixed, noShows, deposit, booked, editing, sitting } = given;
    if (Math.abs(booked - Math.round(booked)) > 1e-9)
      throw new InputError('Bookings are counted whole, such as 9.', 'booked-sittings');
    const margin = contribution(given);
    const up = (x: number): number => Math.ceil(x - 1e-9);
    const sittings = fixed === 0 ? 0 : margin > 0 ? up(fixed / margin) : Infinity;
    const each = (1 - noShows) * margin + noShows * deposit;
    const bookings =
      sittings === 0 ? 0 : Number.isFinite(sittings) ? up((sittings * margin) / each) : Infinity;
    const come = booked * (1 - noShows);
    const hours = (come * editing + booked * sitting) / 3600;
    return {
      sittings: sittings as Count,
      bookings: bookings as Count,
      margin: margin as Money,
      hourly: (hours > 0
        ? (come * margin + (booked - come) * deposit - fixed) / hours
        : undefined) as Money | undefined,
    };
  },
  slips: {
    'rounded-down': {
      compute: (given) => ({
        sittings: Math.floor(given.fixed / contribution(given)) as Count,
      }),
      say: 'That rounds down: with one sitting fewer the day does not pay. Round up.',
    },
    'price-alone': {
      compute: (given) => ({
        sittings: Math.ceil(given.fixed / (given.price ?? (given.fee ?? 0) + given.order)) as Count,
      }),
      say: 'That takes the whole price towards the fixed cost. Each sitting costs something itself: take that off first.',
    },
  },
  worked: {
    tex: String.raw`n = \left\lceil \frac{\val{F}}{\val{M}} \right\rceil = \val{n}`,
    values: ({ fixed }, { margin, sittings }) => ({
      F: { value: fixed, unit: 'EUR', digits: { decimals: 2 } },
      M: { value: margin, unit: 'EUR', digits: { decimals: 2 } },
      n: {
        value: sittings !== undefined && Number.isFinite(sittings) ? sittings : undefined,
        unit: 'count',
        digits: { decimals: 0 },
      },
    }),
  },
  symbols: [],
  model:
    'One kind of sitting; tax is contained in the price; a deposit kept counts as it is. Whole sittings, rounded up.',
  breaks:
    'Averages hide the family that orders nothing; equipment wears; taxes on income, insurance and your own pension are not in it. Ask an accountant.',
  sources: ['psu-breakeven'],
});
