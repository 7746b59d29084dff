import { describe, expect, it } from 'vitest';
import type { Template } from '../../src/exercises/template.ts';
import { complaintsOf } from '../../src/exercises/trial.ts';
import { bank } from '../support/bank.ts';
import { recordOf } from '../support/records.ts';

const sound = <K extends Template['kind']>(id: string, kind: K): Extract<Template, { kind: K }> => {
  const found = bank.find(({ template }) => template.id === id)?.template;
  if (found?.kind !== kind) throw new Error(`The bank has no ${kind} exercise “${id}”.`);
  return found as Extract<Template, { kind: K }>;
};

const nose = sound('nose-against-ears', 'numeric');
const stops = sound('stops-between', 'numeric');
const depth = sound('depth-from-the-drawing', 'reading');
const choice = sound('what-changes-the-nose', 'choice');
const mistake = sound('room-reckoned-short', 'mistake');
const design = sound('seat-in-a-small-room', 'design');
const [option, ...options] = choice.options;
const [line, ...lines] = mistake.lines;

/** What the build says of a sound template that is broken in one place. */
const broken: readonly (readonly [what: string, template: Template, says: RegExp])[] = [
  ['a key that is infinite', { ...depth, ask: 'behind', turns: [], vary: { 'focal-length': { pick: ['35 mm'] }, 'f-number': { pick: ['f/16'] }, 'subject-distance': { pick: ['8 m'] } } }, /no finite number/],
  ['a number out of its range', { ...nose, vary: { ...nose.vary, depth: { pick: ['-4 m', '-5 m'] } } }, /must be/],
  ['an input that is not known', { ...nose, given: { nonsense: '1 m' } }, /nonsense/],
  ['a key of nought', { ...stops, vary: { from: { pick: ['f/4'] }, to: { pick: ['f/4'] } } }, /the key is nought/],
  ['a key that is shown as nought', { ...stops, turns: [], tolerance: { absolute: '0.0001 stop' }, vary: { from: { pick: ['f/4'] }, to: { pick: ['f/4.001'] } } }, /shown as 0/],
  ['a wrong turn that leads to the key', { ...nose, turns: [{ factor: 1, say: 'No turn at all.', credit: 0 }] }, /leads to the key/],
  ['two wrong turns that are one', { ...nose, turns: [{ factor: 2, say: 'Twice.', credit: 0 }, { factor: 2, say: 'Twofold.', credit: 0 }] }, /same number: “Twice/],
  ['a difficulty above its steps', { ...nose, difficulty: 3 }, /calls its difficulty 3; by its steps it is 1$/],
  ['a difficulty under its steps', { ...design, difficulty: 1 }, /calls its difficulty 1; by its steps it is 2 to 3$/],
  ['two answers that read alike', { ...choice, options: [option, option, ...options].filter((one) => one !== undefined) }, /two answers read alike/],
  ['a choice without a right answer', { ...choice, options: choice.options.map((one) => ({ ...one, right: false })) }, /no answer is right/],
  ['two lines that read alike', { ...mistake, lines: [line, line, ...lines].filter((one) => one !== undefined) }, /two lines read alike/],
  ['a mistake without one', { ...mistake, lines: mistake.lines.map((one) => ({ ...one, wrong: false })) }, /not exactly one line is wrong/],
  ['a design nobody can keep', { ...design, accepted: [{ 'focal-length': '24 mm', 'subject-distance': '0.6 m', 'backdrop-distance': '3 m' }] }, /No accepted setting/],
  ['a design without a near miss', { ...design, nearMiss: design.accepted }, /Near misses miss 0 /],
  ['a name nobody knows', { ...nose, solution: 'It is {nobody}.' }, /Nothing is named \{nobody\}/],
  ['such a name in what is said of a wrong turn', { ...nose, turns: [{ factor: 2, say: 'It is {nobody}.', credit: 0 }] }, /Nothing is named \{nobody\}/],
]; // prettier-ignore

describe('what the build stops at', () => {
  it.each(broken)('%s', (_what, template, says) => {
    const found = complaintsOf(template, recordOf, 7);
    expect(found.join('\n')).toMatch(new RegExp(says.source, 'm'));
    for (const one of found)
      expect(one).toMatch(new RegExp(`^${template.id}, seed 7: (?!${template.id})`));
  });

  it('is nothing in the templates these were made from', () => {
    for (const template of [nose, stops, depth, choice, mistake, design])
      expect(complaintsOf(template, recordOf, 7)).toEqual([]);
  });
});
