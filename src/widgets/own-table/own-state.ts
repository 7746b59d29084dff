import { markOf } from '../../formula/notation/number.ts';
import { spelt } from '../../formula/notation/spelt.ts';
import { unitFor, type Style } from '../../formula/notation/write.ts';
import { readInput, writeInput } from '../../formula/read.ts';
import {
  idOf,
  isChoice,
  type Formula,
  type Given,
  type Input,
  type Value,
} from '../../formula/record.ts';
import { rivalsOf } from '../../formula/starts.ts';
import { factorOf } from '../../formula/units.ts';
import { onlyInPlay } from '../../formula/in-play.ts';
import { spare } from '../../formula/query.ts';
import type { Spec, Step } from '../../tabulate/table.ts';
import { PlateState } from '../parts/plate-state.ts';
import {
  canRun,
  count,
  isSpan,
  lengthOf,
  MOST,
  readSeries,
  single,
  SPAN,
  textsOf,
  textsOfLink,
  valuesOf,
  writeSeries,
  type Part,
  type Series,
  type Trouble,
} from './axis.ts';
import { readOwn, RESULTS, type Link } from './link.ts';
import { roundUp, suggest } from './suggest.ts';

export type Side = 'down' | 'across';
export type How = 'span' | 'list';

/** One side of the table: which input runs along it, and what stands in its fields. */
export interface Axis {
  readonly key: string;
  readonly how: How;
  readonly texts: Readonly<Partial<Record<Part, string>>>;
  readonly troubles: Readonly<Partial<Record<Part, Trouble>>>;
  /** The last series that could be read. */
  readonly series: Series;
  /** The texts as the page wrote them; what was not typed over is still the exact value. */
  readonly written: Readonly<Partial<Record<Part, string>>>;
}

/** A table that can be worked out: a spec, and the results each of its columns shows. */
export interface Request {
  readonly spec: Spec;
  /** Keys of the results; each step across has a column for every one of them. */
  readonly show: readonly string[];
  readonly down: string;
  /** Undefined where the results themselves stand across. */
  readonly across: string | undefined;
}

/** A formula whose fields can be read but which computes nothing: the cells do that. */
const quiet = (formula: Formula): Formula => ({ ...formula, compute: () => ({}) });

/**
 * The state of a reader's own table, apart from any page: the two sides, the results shown, and, in a plate's own state,
 * all that stays the same in every cell.
 */
export class OwnState {
  readonly formula: Formula;
  readonly plate: PlateState;
  down: Axis;
  across: Axis | undefined;
  /** Record keys of the results shown. */
  show: readonly string[];
  /** What could not be used of a link. */
  notice = '';
  readonly #start: string;

  /**
   * @param start what a table of this formula shows first, as a link's text
   * @param query a link to read, whoever wrote it
   */
  constructor(formula: Formula, start: string, query?: string, style?: Style) {
    this.formula = formula;
    this.#start = start;
    this.plate = new PlateState({
      formula: quiet(formula),
      draw: () => {
        throw new Error('A table is not drawn.');
      },
      sentence: () => [],
      fields: [],
      more: [],
    });
    if (style) this.plate.style = { ...this.plate.style, ...style };
    const link = readOwn(formula, start, query ?? '');
    this.down = this.#axisOf(link.down);
    this.across = link.across && this.#axisOf(link.across);
    this.show = link.show;
    this.#load(link);
  }

  /** Back to where this formula's table begins; the reader's units and decimal mark stay. */
  reset(): void {
    const link = readOwn(this.formula, this.#start, '');
    this.down = this.#axisOf(link.down);
    this.across = link.across && this.#axisOf(link.across);
    this.show = link.show;
    this.#load(link);
  }

  get style(): PlateState['style'] {
    return this.plate.style;
  }

  axis(side: Side): Axis | undefined {
    return side === 'down' ? this.down : this.across;
  }

  input(key: string): Input {
    const input = this.formula.inputs[key];
    if (!input) throw new Error(`${this.formula.id} has no input ${key}.`);
    return input;
  }

  /** Inputs that can run along a side. */
  runnable(): readonly string[] {
    return Object.entries(this.formula.inputs)
      .filter(([, input]) => canRun(input))
      .map(([key]) => key);
  }

  /** Inputs that stay the same in every cell and count; none that a side stands in for. */
  fixed(): readonly string[] {
    const running = [this.down.key, ...(this.across ? [this.across.key] : [])];
    const rivals = running.flatMap((key) => rivalsOf(this.formula, idOf(this.input(key))));
    return Object.keys(this.formula.inputs).filter(
      (key) =>
        !running.includes(key) &&
        !rivals.includes(idOf(this.input(key))) &&
        this.plate.field(key).shown,
    );
  }

  /** Another input runs along a side; whichever runs along the other changes places with it. */
  turn(side: Side, key: string): void {
    this.notice = '';
    if (key === RESULTS) {
      this.across = undefined;
      // Whoever asks for several sees several.
      if (this.show.length < 2) this.show = Object.keys(this.formula.outputs).slice(0, 6);
      return;
    }
    const before = this.axis(side);
    const other: Side = side === 'down' ? 'across' : 'down';
    const there = this.axis(other);
    if (there?.key === key) {
      if (before) this.#put(other, before);
      else this.turn('down', this.runnable().find((one) => one !== key) ?? key);
      this.#put(side, there);
      return;
    }
    const read = readSeries(this.input(key), textsOfLink(suggest(this.input(key))), {
      stored: true,
    });
    if (!read.series) throw new Error(`${key} has no series to begin with.`);
    // What the other side needs may have been given up for the input that ran here before.
    if (there) this.#put(other, there);
    this.#put(side, this.#axisOf({ key, series: read.series }));
  }

  /** The reader typed in one of the fields of a side. */
  type(side: Side, part: Part, text: string): void {
    const axis = this.axis(side);
    if (!axis) return;
    this.notice = '';
    this.#read(side, { ...axis, texts: { ...axis.texts, [part]: text } });
    if (!this.axis(side)?.troubles[part]) this.#answerIn(text);
  }

  /** From, to and step, or a list; what stands in the one is written into the other. */
  write(side: Side, how: How): void {
    const axis = this.axis(side);
    if (!axis || axis.how === how) return;
    const input = this.input(axis.key);
    if (isChoice(input)) return;
    const values = valuesOf(single(input), axis.series);
    const numbers = values.filter((one): one is number => Number.isFinite(one));
    if (how === 'list') {
      this.#put(side, this.#axisOf({ key: axis.key, series: { values: values.slice(0, MOST.list) } })); // prettier-ignore
      return;
    }
    const [from, to] = [Math.min(...numbers), Math.max(...numbers)];
    const factor = factorOf(input.unit);
    const step = roundUp((to - from) / factor / Math.max(1, numbers.length - 1) || 1) * factor;
    this.#put(side, this.#axisOf({ key: axis.key, series: { from, to, step } }));
  }

  /** One of a few choices is ticked or not. */
  tick(side: Side, id: string, on: boolean): void {
    const axis = this.axis(side);
    if (!axis) return;
    const ids = (axis.texts.list ?? '').split(';').map((one) => one.trim()).filter(Boolean); // prettier-ignore
    const next = on ? [...ids, id] : ids.filter((one) => one !== id);
    const input = this.input(axis.key);
    const order = isChoice(input) ? Object.keys(input.choices) : [];
    const place = (one: string): number =>
      order.includes(one) ? order.indexOf(one) : order.length;
    this.type(side, 'list', next.toSorted((a, b) => place(a) - place(b)).join('; '));
  }

  /** A result is shown or not. */
  toggle(key: string, on: boolean): void {
    this.notice = '';
    this.show = Object.keys(this.formula.outputs).filter((one) =>
      one === key ? on : this.show.includes(one),
    );
  }

  /** The reader says which of two readings was meant. */
  choose(side: Side, part: Part, reading: string): void {
    const axis = this.axis(side);
    if (!axis) return;
    const input = this.input(axis.key);
    if (isChoice(input)) return;
    const unit = unitFor(input.unit, input.imperial, this.style);
    // Of a list only the value in question is written anew: the first that has two readings.
    const parts = (axis.texts[part] ?? '').split(';');
    const at = parts.findIndex(
      (one) => (readSeries(input, { list: one }, { stored: false, unit }).troubles.list?.readings ?? []).includes(reading), // prettier-ignore
    );
    const mark = markOf(parts[Math.max(at, 0)] ?? '');
    if (mark)
      this.plate.style = {
        ...this.style,
        decimal: reading.includes('.') === (mark === 'comma') ? 'comma' : 'point',
      };
    // Four decimals have one reading only, whichever the mark.
    const plain = reading.replace(/\.\d{3}(?!\d)/, (digits) => `${digits}0`);
    parts[Math.max(at, 0)] = ` ${mark === 'comma' ? plain.replace('.', ',') : plain}`;
    this.#read(side, { ...axis, texts: { ...axis.texts, [part]: parts.join(';').trim() } });
  }

  /** Metric or imperial: every field that can be read is written anew. */
  measure(system: 'metric' | 'imperial'): void {
    this.plate.measure(system);
    this.down = this.#rewritten(this.down);
    if (this.across) this.across = this.#rewritten(this.across);
  }

  /** Why there can be no table yet, beyond what a field says of itself. */
  trouble(): string {
    const { formula, down, across, show } = this;
    if (show.length === 0) return 'Choose at least one result to show.';
    if (
      across &&
      rivalsOf(formula, idOf(this.input(down.key))).includes(idOf(this.input(across.key)))
    )
      // prettier-ignore
      return `${spelt(this.input(down.key))} and ${spelt(this.input(across.key))} stand in for one another: let only one of them run.`;
    const [rows, steps] = this.#size();
    const columns = steps * show.length;
    const made = `That makes ${count(rows * columns)} cells, ${count(rows)} down and ${count(columns)} across.`;
    if (columns > MOST.columns)
      return `${made} A table is at most ${MOST.columns} columns wide: let the longer series run down, or take ${this.#wider('across', MOST.columns / show.length)}.`;
    if (rows * columns <= MOST.cells) return this.plate.trouble?.message ?? '';
    const side = isSpan(down.series) || !across ? 'down' : 'across';
    const room = side === 'down' ? MOST.cells / columns : MOST.cells / rows / show.length;
    return `${made} A table holds ${count(MOST.cells)}: take ${this.#wider(side, room)}.`;
  }

  /** The table that is asked for; undefined while something is wrong. */
  request(): Request | undefined {
    const { down, across, show, formula, plate } = this;
    const wrong = [down, across].some((axis) => axis && Object.keys(axis.troubles).length > 0);
    if (wrong || plate.stale || this.trouble() !== '') return undefined;
    const steps = ({ key, series }: Axis): readonly Step[] =>
      valuesOf(this.input(key), series).map((value) => ({ given: { [key]: value } }));
    return {
      spec: {
        formula,
        fixed: this.#given(),
        down: steps(down),
        across: across ? steps(across) : [{ given: {} }],
      },
      show,
      down: down.key,
      across: across?.key,
    };
  }

  /** What an address must hold to bring this table back. */
  query(): string {
    const { down, across, show, formula } = this;
    const id = (key: string): string => idOf(this.input(key));
    const run = ({ key, series }: Axis): string => `${id(key)}=${spare(writeSeries(this.input(key), series))}`; // prettier-ignore
    const outputs = show.map((key) => idOf(formula.outputs[key] ?? { name: key }));
    const running = [down.key, across?.key].map((key) => key && id(key));
    return [
      `formula=${formula.id}`,
      `down=${id(down.key)}`,
      `across=${across ? id(across.key) : RESULTS}`,
      `show=${outputs.join(';')}`,
      run(down),
      ...(across ? [run(across)] : []),
      ...this.plate.query().split('&').filter((pair) => !running.includes(pair.split('=')[0])),
    ].filter(Boolean).join('&'); // prettier-ignore
  }

  /** All that is fixed, as the link has it; what it leaves out is left out of the cells too. */
  #given(): Given {
    const written = new URLSearchParams(this.plate.query());
    return Object.fromEntries(
      Object.entries(this.formula.inputs)
        .filter(([key]) => key !== this.down.key && key !== this.across?.key)
        .map(([key, input]) => {
          const text = written.get(idOf(input));
          return [key, text === null ? undefined : readInput(input, text, { stored: true })];
        }),
    );
  }

  #size(): [number, number] {
    const length = ({ key, series }: Axis): number => lengthOf(this.input(key), series);
    return [length(this.down), this.across ? length(this.across) : 1];
  }

  /** What to try where a side is too long. */
  #wider(side: Side, room: number): string {
    const axis = this.axis(side);
    const input = axis && this.input(axis.key);
    if (!axis || !input || !isSpan(axis.series) || isChoice(input) || room < 2)
      return 'fewer values';
    const { from, to } = axis.series;
    const unit = unitFor(input.unit, input.imperial, this.style);
    const step = roundUp(Math.abs(to - from) / factorOf(unit) / (Math.floor(room) - 1));
    return `a step of ${this.style.decimal === 'comma' ? String(step).replace('.', ',') : step} ${unit} or more`.replace(' f/ ', ' '); // prettier-ignore
  }

  #load({ values, notices, down, across }: Link): void {
    const running = [down, ...(across ? [across] : [])];
    const all: Record<string, Value> = { ...values };
    for (const axis of running) all[axis.key] = this.#standing(axis, all);
    this.plate.load({ values: all, notices: [] });
    this.notice = notices.join(' ');
  }

  /** The value that stands in a plate for a whole side: of choices the one that brings most other inputs into play. */
  #standing({ key, series }: { key: string; series: Series }, values: Given): Value {
    const run = valuesOf(this.input(key), series);
    if (!isChoice(this.input(key))) return run[0];
    const inPlay = (value: Value): number =>
      Object.keys(onlyInPlay(this.formula, { ...values, ...allOf(this.formula), [key]: value }))
        .length;
    return run.toSorted((a, b) => inPlay(b) - inPlay(a))[0];
  }

  #put(side: Side, axis: Axis): void {
    if (side === 'down') this.down = axis;
    else this.across = axis;
    const input = this.input(axis.key);
    const value = this.#standing(axis, this.plate.given);
    if (isChoice(input)) this.plate.type(axis.key, writeInput(input, value));
    else this.plate.put(axis.key, value);
    this.#join(axis.key);
  }

  /** What is of use only together comes together: a distance with its focal length. */
  #join(key: string): void {
    const group = (this.formula.ways ?? [])
      .flatMap(({ groups }) => groups)
      .find((ids) => ids.includes(idOf(this.input(key))));
    for (const [other, input] of Object.entries(this.formula.inputs))
      if (group?.includes(idOf(input)) && !isChoice(input) && this.plate.field(other).text === '') {
        const start = input.start * factorOf(input.unit);
        this.plate.put(other, input.list ? [start] : start);
      }
  }

  #axisOf({ key, series }: { key: string; series: Series }): Axis {
    const texts = textsOf(this.input(key), series, this.style);
    return { key, series, texts, written: texts, troubles: {}, how: isSpan(series) ? 'span' : 'list' }; // prettier-ignore
  }

  #rewritten(axis: Axis): Axis {
    return Object.keys(axis.troubles).length > 0 ? axis : this.#axisOf(axis);
  }

  /** Reads the fields of a side anew. */
  #read(side: Side, axis: Axis): void {
    const input = this.input(axis.key);
    const texts = axis.how === 'list' ? { list: axis.texts.list ?? '' } : axis.texts;
    const held: Partial<Record<Part, number>> = {};
    const { series } = axis;
    if (isSpan(series))
      for (const part of SPAN)
        if (axis.texts[part] === axis.written[part] && !axis.troubles[part])
          held[part] = series[part];
    const read = readSeries(input, texts, {
      stored: false,
      held,
      ...(!isChoice(input) && { unit: unitFor(input.unit, input.imperial, this.style) }),
    });
    const next = { ...axis, troubles: read.troubles, ...(read.series && { series: read.series }) };
    if (read.series) this.#put(side, next);
    else if (side === 'down') this.down = next;
    else this.across = next;
  }

  /** Answers come in the decimal mark the reader last used. */
  #answerIn(text: string): void {
    const mark = text.split(';').map(markOf).find(Boolean);
    if (mark) this.plate.style = { ...this.style, decimal: mark };
  }
}

/** Something in every place, so that only choices decide what is in play. */
const allOf = ({ inputs }: Formula): Given =>
  Object.fromEntries(
    Object.entries(inputs).map(([key, input]) => [
      key,
      isChoice(input) ? readInput(input, input.start) : input.start,
    ]),
  );
