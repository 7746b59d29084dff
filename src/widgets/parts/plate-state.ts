import { AmbiguousError, InputError } from '../../formula/errors.ts';
import { compute } from '../../formula/compute.ts';
import { markOf, type Mark } from '../../formula/notation/number.ts';
import { SIGN } from '../../formula/notation/sign.ts';
import { writeQuantity, type Style } from '../../formula/notation/write.ts';
import { complete, readInput, writeInput } from '../../formula/read.ts';
import {
  idOf,
  isChoice,
  type Given,
  type Input,
  type Results,
  type Value,
} from '../../formula/record.ts';
import { rivalsOf, startsOf } from '../../formula/starts.ts';
import { dimensionOf, factorOf, type Unit } from '../../formula/units.ts';
import { shownUnit, showFor, type Calculator, type SetPart } from './calculator.ts';
import { trackFor, type Track } from './track.ts';
import type { Loaded } from './read-link.ts';
import { inPlay, inWords, writeQuery } from './starts.ts';

/** What is wrong with a field, and the readings to choose from where its text has two. */
export interface Trouble {
  readonly message: string;
  readonly readings: readonly string[];
}

/** How one reader's numbers are written, all over a page. */
export type Written = Required<Pick<Style, 'system' | 'decimal'>>;

/** All that one field shows. */
export interface FieldView {
  readonly text: string;
  readonly shown: boolean;
  /** The unit after the field; empty for choices and for what has none. */
  readonly unit: string;
  /** The value that is assumed while the field is empty. */
  readonly placeholder: string;
  /** “read as 1.5 m”, where that is not what stands in the field. */
  readonly echo: string;
  readonly trouble: Trouble | undefined;
  readonly track: Track | undefined;
  /** The SI value, where the field holds one that can be used. */
  readonly value: number | undefined;
  /** The value in words, for those who listen to the slider. */
  readonly spoken: string;
}

/**
 * The state of one plate, apart from any page: texts as typed, what they were read as, and the last results that could
 * be computed. The page before any script and the page after every change are both set from it.
 *
 * A text the page wrote itself (a start, a slider, a link, a change of units) keeps the exact value beside it, so that
 * 2.21 m shown as 7.25 ft is still 2.21 m until the reader types.
 */
export class PlateState {
  readonly calculator: Calculator;
  style: Written & Style = {
    system: 'metric',
    decimal: 'point',
  };
  /** One or two sentences about the link this state came from. */
  notice = '';
  /** The last good set: complete values and what they give. */
  given: Given = {};
  results: Results = {};
  /** True while some field cannot be used: the results are those of the set before. */
  stale = false;
  /** Troubles of no visible field. */
  trouble: Trouble | undefined;

  /** What “Reset” goes back to: the record’s starts, or those of the reader’s kit. */
  starts: Given;

  #texts: Record<string, string> = {};
  #held: Record<string, number> = {};
  #troubles: Record<string, Trouble> = {};
  #read: Record<string, Value> = {};

  constructor(calculator: Calculator) {
    this.calculator = calculator;
    this.starts = startsOf(calculator.formula);
    this.reset();
  }

  /** Back to where the page began; the reader's units and decimal mark stay. */
  reset(): void {
    this.notice = '';
    this.#fill(this.starts);
  }

  /** Takes the state a link was read to. */
  load({ values, notices }: Loaded): void {
    this.notice = notices.join(' ');
    this.#fill(values);
  }

  /** What an address must hold to bring this state back. */
  query(): string {
    const { formula } = this.calculator;
    const written = Object.entries(this.given).filter(([key]) => {
      const input = formula.inputs[key];
      const worked = input && 'default' in input && typeof input.default === 'function';
      return input && this.#inPlay(input) && (this.#read[key] !== undefined || !worked);
    });
    return writeQuery(formula, Object.fromEntries(written));
  }

  /** The reader typed or chose something. */
  type(key: string, text: string): void {
    this.#texts[key] = text;
    Reflect.deleteProperty(this.#held, key);
    this.notice = '';
    if (text.trim() !== '') this.#clearRivals(key);
    this.#refresh();
    if (!this.#troubles[key] && !isChoice(this.#input(key))) this.#answerIn(markOf(text));
  }

  /** A slider, a preset or an answer sets a value. */
  put(key: string, value: Value): void {
    this.notice = '';
    this.#write(key, value);
    this.#clearRivals(key);
    this.#refresh();
  }

  /** The reader says which of two readings was meant. */
  choose(key: string, reading: string): void {
    // Whoever means a decimal says with which mark; whoever means thousands uses the other one.
    const mark = markOf(this.#texts[key] ?? '');
    if (mark) this.#answerIn(reading.includes('.') === (mark === 'comma') ? 'comma' : 'point');
    this.put(key, readInput(this.#input(key), reading, { stored: true }));
  }

  /** Metric or imperial: fields that hold a usable value are written anew in the other unit. */
  measure(system: 'metric' | 'imperial'): void {
    this.adopt({ ...this.style, system });
  }

  /**
   * Takes up how numbers are written elsewhere. What the page wrote itself is written anew; what was typed stays as it
   * was typed, unless its unit is another now.
   * @returns whether that changed anything
   */
  adopt({ system, decimal }: Written): boolean {
    const before = this.style;
    const other = system !== before.system;
    if (!other && decimal === before.decimal) return false;
    const values = Object.entries({ ...(other && this.#read), ...this.#held });
    this.style = { ...before, system, decimal };
    for (const [key, value] of values) this.#write(key, value);
    this.#refresh();
    return true;
  }

  /** The sentence the plate says about its last good set. */
  sentence(): readonly SetPart[] {
    const { formula, sentence } = this.calculator;
    const parts = sentence(
      this.given,
      this.results,
      showFor(formula, this.given, this.results, this.style),
    );
    // A number stays on one line with its unit, and a format with both its sides.
    const glue = (text: string): string =>
      text.replace(/(?<=[\d′]) (?=(?:[cm]?m|s|in|EV|%|×|\d)(?![a-z]))|(?<=×|ISO) /g, '\u00a0');
    return parts.flatMap(({ text, main = false }) =>
      (main ? text : glue(text))
        .split(/\b(f)(?=\/)/)
        .map((piece, i) => ({ text: piece, main, italic: i % 2 === 1 }))
        .filter((piece) => piece.text),
    );
  }

  field(key: string): FieldView {
    const input = this.#input(key);
    const text = this.#texts[key] ?? '';
    const value = this.#read[key];
    const trouble = this.#troubles[key];
    const base = { text, trouble, shown: this.#inPlay(input) };
    if (isChoice(input))
      return {
        ...base,
        unit: '',
        placeholder: '',
        echo: '',
        track: undefined,
        value: undefined,
        spoken: '',
      };
    const unit = this.#unit(input);
    const number = typeof value === 'number' ? value : undefined;
    const assumed = this.given[key];
    return {
      ...base,
      unit: SIGN[unit] ?? unit,
      placeholder:
        text === '' && typeof assumed === 'number'
          ? this.#numberText(assumed, unit, input.fraction, 4)
          : '',
      echo:
        number === undefined || trouble || key in this.#held ? '' : this.#echo(text, number, unit),
      track: trackFor(input, unit),
      value: number,
      spoken: number === undefined ? 'not given' : this.#spoken(number, unit, input.fraction),
    };
  }

  /** Results are answered in the decimal mark the reader last used. */
  #answerIn(mark: Mark | undefined): void {
    if (mark) this.adopt({ ...this.style, decimal: mark });
  }

  /** Of inputs that stand in for one another the last one set counts; the others are emptied. */
  #clearRivals(key: string): void {
    const rivals = rivalsOf(this.calculator.formula, idOf(this.#input(key)));
    for (const [other, input] of Object.entries(this.calculator.formula.inputs))
      if (rivals.includes(idOf(input))) {
        this.#texts[other] = '';
        Reflect.deleteProperty(this.#held, other);
      }
  }

  #input(key: string): Input {
    const input = this.calculator.formula.inputs[key];
    if (!input) throw new Error(`${this.calculator.formula.id} has no input ${key}.`);
    return input;
  }

  #unit(input: Exclude<Input, { choices: unknown }>): Unit {
    return shownUnit(input.unit, input.imperial, this.style);
  }

  #inPlay(input: Input): boolean {
    return inPlay(this.calculator.formula, input, (key) => this.#texts[key]);
  }

  #fill(values: Given): void {
    this.#texts = {};
    this.#held = {};
    for (const [key, value] of Object.entries(values)) this.#write(key, value);
    this.#refresh();
  }

  /** Writes a value into its field, as short as it can be said without losing it. */
  #write(key: string, value: Value): void {
    const input = this.#input(key);
    if (isChoice(input) || Array.isArray(value)) this.#texts[key] = writeInput(input, value);
    else if (typeof value === 'number') {
      this.#texts[key] = this.#numberText(value, this.#unit(input), input.fraction);
      this.#held[key] = value;
    }
  }

  #numberText(si: number, unit: Unit, parts?: boolean, digits = 6): string {
    if (si === Infinity) return '∞';
    const x = si / factorOf(unit);
    // A shutter's own marks: below a third of a second in parts of one. A power dial's are all parts.
    const under =
      x > 0 && x < (parts ? 1 : unit === 's' ? 0.3 : 0) ? Number((1 / x).toPrecision(4)) : 0;
    if (under)
      return `1/${this.style.decimal === 'comma' ? String(under).replace('.', ',') : under}`;
    const number = String(
      unit === 'ft' && Math.abs(x) >= 0.1 ? Number(x.toFixed(2)) : Number(x.toPrecision(digits)),
    );
    const text = (dimensionOf(unit) === 'f-number' ? 'f/' : '') + number.replace('-', '−');
    return this.style.decimal === 'comma' ? text.replace('.', ',') : text;
  }

  #spoken(si: number, unit: Unit, parts?: boolean): string {
    return si === Infinity
      ? 'infinity'
      : `${this.#numberText(si, unit, parts)} ${SIGN[unit] === '' ? '' : unit}`.trim();
  }

  #echo(text: string, si: number, unit: Unit): string {
    const plain = (said: string): string =>
      said.replaceAll(/\s/g, '').replace('−', '-').replace(/^f\//i, '').replace(',', '.');
    const number = this.#numberText(si, unit);
    const typed = plain(text).replace(new RegExp(`${unit}$`), '');
    if (typed === plain(number) || Number(typed) === Number(plain(number))) return '';
    return `read as ${si === Infinity ? 'infinity' : writeQuantity(si, unit, { significant: 6 }, { ...this.style, exact: true })}`;
  }

  /** Reads every field in play, and computes if all can be used. */
  #refresh(): void {
    const { formula } = this.calculator;
    const read: Record<string, Value> = {};
    this.#troubles = {};
    this.trouble = undefined;
    const note = (key: string | undefined, error: unknown): void => {
      if (!(error instanceof InputError)) throw error;
      const trouble = {
        message: inWords(formula, error),
        readings: error instanceof AmbiguousError ? error.readings : [],
      };
      if (key === undefined) this.trouble = trouble;
      else this.#troubles[key] = trouble;
    };
    for (const [key, input] of Object.entries(formula.inputs)) {
      if (!this.#inPlay(input)) continue;
      const text = this.#texts[key] ?? '';
      if (key in this.#held) read[key] = this.#held[key];
      else if (text.trim() !== '' || (input.default === undefined && !input.optional)) {
        try {
          read[key] = readInput(input, text, isChoice(input) ? {} : { unit: this.#unit(input) });
        } catch (error) {
          note(key, error);
        }
      }
    }
    this.#read = read;
    this.stale = Object.keys(this.#troubles).length > 0;
    if (!this.stale) {
      try {
        const given = complete(formula, read);
        this.results = compute(formula, given);
        this.given = given;
        // Sums are said in the currency that was chosen.
        const { currency } = given;
        if (typeof currency === 'string') this.style = { ...this.style, currency };
      } catch (error) {
        this.stale = true;
        const id = error instanceof InputError ? error.input : undefined;
        const key = Object.keys(formula.inputs).find((one) => idOf(this.#input(one)) === id);
        note(key !== undefined && this.#inPlay(this.#input(key)) ? key : undefined, error);
      }
    }
  }
}
