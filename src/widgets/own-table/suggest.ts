import { canonical } from '../../formula/notation/write.ts';
import { isChoice, type Input } from '../../formula/record.ts';
import { factorOf } from '../../formula/units.ts';

const tidy = (x: number): number => Number(x.toPrecision(12));

/** The smallest of 1, 2, 5, 10, … that is not below x. */
export const roundUp = (x: number): number => {
  const power = 10 ** Math.floor(Math.log10(x));
  return tidy(([1, 2, 5].find((n) => n * power >= x * 0.999_999) ?? 10) * power);
};

/**
 * A series for an input nobody has said one for, as a link writes it: the usual values where its record has some, all
 * of a few choices, else about ten round steps over what its slider runs over.
 * @example suggest(subjectDistance) // '0.5m..6m..1m'
 */
export const suggest = (input: Input): string => {
  if (isChoice(input)) return Object.keys(input.choices).slice(0, 8).join(';');
  const { unit, start, series, range } = input;
  const text = (x: number): string => canonical(tidy(x) * factorOf(unit), unit).replaceAll(' ', '');
  if (series) return series.map(text).join(';');
  const wide = start > 0 ? [start / 2, start * 2] : [start - 5, start + 5];
  const [low = 0, high = 0] = (input.span ?? wide).map((x, i) =>
    i === 0 ? Math.max(x, range[0]) : Math.min(x, range[1]),
  );
  if (unit === 'f/')
    return [1.4, 2, 2.8, 4, 5.6, 8, 11, 16]
      .filter((x) => x >= low && x <= high)
      .map(text)
      .join(';');
  // What runs over decades is reckoned in stops, or in 1, 2, 5.
  if (low > 0 && high / low > 60) {
    const stops = unit === 's' || input.fraction;
    const values: number[] = [];
    let x = stops ? start : roundUp(low);
    while (stops && x / 2 >= low) x /= 2;
    for (; x <= high && values.length < 16; x = stops ? x * 2 : roundUp(x * 1.5)) values.push(x);
    return values.map(text).join(';');
  }
  const step = Math.max(roundUp((high - low) / 10), unit === 'count' || unit === 'px' ? 1 : 0);
  const [from, to] = [Math.ceil(low / step) * step, Math.floor(high / step) * step];
  return `${text(Math.max(from, low))}..${text(to)}..${text(step)}`;
};
