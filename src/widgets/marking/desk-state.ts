import { questionsOf, type Assignment } from '../../exercises/assignment.ts';
import { totalOf, type Student } from '../../exercises/class-csv.ts';
import {
  itemsOf,
  markRow,
  ruled,
  type ItemStatistics,
  type Row,
  type Ruling,
  type Tools,
} from '../../exercises/desk.ts';
import { Pile } from '../../exercises/pile.ts';
import type { Work } from '../../exercises/result-file.ts';
import {
  countRulings,
  mergeRulings,
  NO_RULINGS,
  overrideKey,
  sumOfAnswer,
  writeRulings,
  type AllRulings,
  type Rulings,
} from '../../exercises/rulings.ts';
import type { Tolerance } from '../../exercises/span.ts';
import { inSlices } from '../parts/slices.ts';
import type { Decision } from './answer.ts';
import { readTolerance } from './tolerance.ts';

/** One assignment as it is marked by now. */
export interface OnDesk {
  readonly link: string;
  readonly assignment: Assignment;
  readonly tools: Tools;
  readonly students: readonly Student[];
  /** By template id: those that could be read. */
  readonly tolerances: ReadonlyMap<string, Tolerance>;
}

/** A student’s answer: by their place in the class, and the question’s in the work. */
export type Place = readonly [student: number, at: number];

type Heard = (done: number) => void;

const slices = async <T, U>(
  things: readonly T[],
  act: (thing: T, at: number) => U,
  heard: Heard,
): Promise<readonly U[]> =>
  (await inSlices(things, act, (done) => {
    heard(done);
    return true;
  })) ?? [];

/** What lies on the marking desk and what was decided about it, with no page around it. */
export class DeskState {
  readonly pile = new Pile();
  #rulings: AllRulings = new Map();
  #unsaved = false;
  #now: OnDesk | undefined;
  /** Marks of works as they are ruled by now. */
  #known = new WeakMap<Work, readonly Row[]>();

  get now(): OnDesk | undefined {
    return this.#now;
  }

  /** Whether something was decided that no file has. */
  get unsaved(): boolean {
    return this.#unsaved;
  }

  get ruled(): ReturnType<typeof countRulings> {
    return countRulings(this.#rulings);
  }

  /** What was decided about the assignment that is out. */
  get rulings(): Rulings {
    return this.#rulings.get(this.#now?.link ?? '') ?? NO_RULINGS;
  }

  /** Takes a file. @returns a sentence, where it brought rulings */
  take(name: string, text: string): string | undefined {
    const file = this.pile.add(name, text);
    if (!file) return undefined;
    this.#rulings = mergeRulings(this.#rulings, file.all);
    this.#known = new WeakMap();
    const { marks, tolerances } = countRulings(file.all);
    const sum =
      file.whole === false ? ' Its sum does not fit: it was changed, or hurt on the way.' : '';
    return `Your rulings were read: ${marks} ${marks === 1 ? 'mark' : 'marks'}, ${tolerances} ${tolerances === 1 ? 'tolerance' : 'tolerances'}.${sum}`;
  }

  /** All that was decided, as the text of a file; from now on it counts as saved. */
  save(at: string): string {
    this.#unsaved = false;
    return writeRulings(this.#rulings, at);
  }

  /** Marks everything of one assignment again, where it is not marked yet, in the order of aliases. */
  async mark(
    { link, assignment }: Pick<OnDesk, 'link' | 'assignment'>,
    tools: Tools,
    heard: Heard,
  ): Promise<OnDesk> {
    const rulings = this.#rulings.get(link) ?? NO_RULINGS;
    const { widths: tolerances } = this.#widths(tools, rulings);
    const ruling = this.#ruling(assignment, tolerances, rulings);
    const { compare } = new Intl.Collator(undefined, { numeric: true });
    const works = this.pile.taken
      .flatMap(({ work }) => (work.link === link ? work : []))
      .toSorted((a, b) => compare(a.alias, b.alias));
    // Question by question: the first of a class take longest, and no slice should.
    const asked = await slices(
      works,
      (work, place) =>
        this.#known.has(work)
          ? []
          : questionsOf(assignment, work.alias).map((question) => ({ work, place, question })),
      () => undefined,
    );
    const open = asked.flat();
    const made = new Map<Work, Row[]>();
    await slices(
      open,
      ({ work, question }) => {
        const rows = made.get(work) ?? [];
        rows.push(markRow(work, question, tools, ruling));
        made.set(work, rows);
      },
      (done) => heard(open[done - 1]?.place ?? works.length),
    );
    for (const [work, rows] of made) this.#known.set(work, rows);
    const students = works.map((work): Student => ({ work, rows: this.#known.get(work) ?? [] }));
    this.#now = { link, assignment, tools, students, tolerances };
    return this.#now;
  }

  row([student, at]: Place): Row | undefined {
    return this.#now?.students[student]?.rows[at];
  }

  /** Decides one mark by hand, or takes that back. */
  decide(place: Place, decision: Decision, at: string): void {
    const row = this.row(place);
    const alias = this.#now?.students[place[0]]?.work.alias;
    if (!row || alias === undefined) return;
    const overrides = new Map(this.rulings.overrides);
    const key = overrideKey(alias, row.question);
    if (!decision) overrides.delete(key);
    else
      overrides.set(key, {
        alias,
        ...row.question,
        ...decision,
        answer: sumOfAnswer(row.raw),
        at,
      });
    this.#rule({ overrides });
    this.#put(place[0], new Map([[place[1], ruled(row, alias, { overrides })]]));
  }

  /**
   * Marks with another tolerance, as it was typed; without one, as the exercise has it.
   * @returns what is wrong with it; then nothing has changed
   */
  async widen(
    template: string,
    text: string,
    at: string,
    heard: Heard,
  ): Promise<string | undefined> {
    if (!this.#now) return undefined;
    const { tools, assignment } = this.#now;
    const tolerances = new Map(this.rulings.tolerances);
    if (text === '') tolerances.delete(template);
    else tolerances.set(template, { text, at });
    const { widths, wrong } = this.#widths(tools, { ...NO_RULINGS, tolerances });
    if (wrong.has(template)) return wrong.get(template);
    this.#rule({ tolerances });
    this.#now = { ...this.#now, tolerances: widths };
    const ruling = this.#ruling(assignment, widths, this.rulings);
    await slices(
      this.#now.students,
      ({ work, rows }, student) => {
        const changed = rows.flatMap(({ question }, place) =>
          question.template === template
            ? [[place, markRow(work, question, tools, ruling)] as const]
            : [],
        );
        this.#put(student, new Map(changed));
      },
      heard,
    );
    return undefined;
  }

  /** What is wrong with tolerances that a file brought; by template id. */
  wrong(): ReadonlyMap<string, string> {
    return this.#now ? this.#widths(this.#now.tools, this.rulings).wrong : new Map();
  }

  items(): readonly ItemStatistics[] {
    return itemsOf((this.#now?.students ?? []).map(({ rows }) => rows));
  }

  /** The class in one sentence or two. */
  summary(): string {
    const totals = (this.#now?.students ?? []).map(({ rows }) => totalOf(rows));
    const sums = totals.map(({ total }) => total).toSorted((a, b) => a - b);
    const waiting = totals.reduce((sum, one) => sum + one.waiting, 0);
    const half = (sums.length - 1) / 2;
    const mean = sums.reduce((sum, total) => sum + total, 0) / sums.length;
    const middle = ((sums[Math.floor(half)] ?? 0) + (sums[Math.ceil(half)] ?? 0)) / 2;
    const of = this.#now?.students[0]?.rows.length ?? 0;
    const spread =
      sums.length > 1
        ? `, middle ${middle.toFixed(1)}, from ${(sums[0] ?? 0).toFixed(1)} to ${(sums.at(-1) ?? 0).toFixed(1)}`
        : '';
    const wait =
      waiting === 0
        ? ''
        : ` ${waiting} ${waiting === 1 ? 'answer waits' : 'answers wait'} for you.`;
    return `${sums.length} ${sums.length === 1 ? 'student' : 'students'}. Mean ${mean.toFixed(1)} of ${of}${spread}.${wait}`;
  }

  /** The next answer that waits for a person, question by question, since whoever judges compares like with like. */
  waiting([student, at]: Place): Place | undefined {
    const { students = [] } = this.#now ?? {};
    const cells = students.length * (students[0]?.rows.length ?? 0);
    for (let step = 1; step <= cells; step++) {
      const cell = (at * students.length + student + step) % cells;
      const place = [cell % students.length, Math.floor(cell / students.length)] as const;
      if (this.row(place)?.credit === undefined) return place;
    }
    return undefined;
  }

  #rule(now: Partial<Rulings>): void {
    if (!this.#now) return;
    this.#rulings = new Map(this.#rulings).set(this.#now.link, { ...this.rulings, ...now });
    this.#unsaved = true;
  }

  #put(student: number, changed: ReadonlyMap<number, Row>): void {
    const one = this.#now?.students[student];
    if (!this.#now || !one) return;
    const rows = one.rows.map((row, at) => changed.get(at) ?? row);
    this.#known.set(one.work, rows);
    this.#now = { ...this.#now, students: this.#now.students.with(student, { ...one, rows }) };
  }

  #ruling({ hints }: Assignment, tolerances: Ruling['tolerances'], { overrides }: Rulings): Ruling {
    return { tolerances, overrides, hintCost: hints === 'tenth' ? 0.1 : 0 };
  }

  /** Tolerances as they were typed, read; what cannot be read is told and counts for nothing. */
  #widths(
    tools: Tools,
    { tolerances }: Rulings,
  ): {
    readonly widths: ReadonlyMap<string, Tolerance>;
    readonly wrong: ReadonlyMap<string, string>;
  } {
    const [widths, wrong] = [new Map<string, Tolerance>(), new Map<string, string>()];
    for (const [id, { text }] of tolerances) {
      const template = tools.templates.get(id);
      if (!template || !('ask' in template)) continue;
      const width = readTolerance(text, template, tools.formulas);
      if (typeof width === 'string') wrong.set(id, width);
      else if (width) widths.set(id, width);
    }
    return { widths, wrong };
  }
}
