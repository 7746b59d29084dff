import type { Locator, Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { keyOf, variantOf, workOut } from '../../src/exercises/variant.ts';
import type { Asking, Template } from '../../src/exercises/template.ts';
import { judge } from '../support/axe.ts';
import { bank } from '../support/bank.ts';
import { sticksOut, tooSmall } from '../support/measure.ts';
import { recordOf } from '../support/records.ts';
import { look, reader } from '../support/site.ts';

const address = (query = ''): string => `${inject('url')}practise/${query && `?${query}`}`;
const still = { reducedMotion: 'reduce' } as const;
const wide = { ...still, viewport: { width: 1280, height: 900 } } as const;
const eventually = <T>(see: () => Promise<T>) => expect.poll(see, { timeout: 15_000 });
const spaced = (text: string): string => text.replaceAll(/[\s\u00a0\u202f]+/g, ' ').trim();

const SEED = 7;
const NUMBER = 'step-back-for-the-frame';
const MANY = 'what-changes-the-nose';
const TABLE = 'frame-from-a-table';
const DRAWING = 'quay-from-the-drawing';
const MISTAKE = 'room-reckoned-short';
const DESIGN = 'seat-in-a-small-room';
const BRIEF = 'tape-and-frame';
const single = bank.find(
  ({ template }) =>
    template.kind === 'choice' && template.options.filter(({ right }) => right).length === 1,
)?.template.id;
if (single === undefined) throw new Error('No exercise has one right answer.');
const ONE: string = single;

const templateOf = (id: string): Template => {
  const found = bank.find(({ template }) => template.id === id)?.template;
  if (!found) throw new Error(`The exercise ${id} is gone.`);
  return found;
};
const keyAt = (id: string, seed = SEED) => {
  const template = templateOf(id);
  if (!('ask' in template)) throw new Error(`${id} asks for no number.`);
  return keyOf(variantOf<Extract<Template, Asking>>(template, recordOf, seed), recordOf);
};
/** The right number as a student may type it. */
const rightAt = (id: string, seed = SEED): string => {
  const template = templateOf(id) as Extract<Template, Asking>;
  const { given } = variantOf<Template>(template, recordOf, seed);
  return workOut(recordOf, { formula: template.formula, given, result: template.ask }).text;
};

const sheet = (page: Page): Locator => page.locator('.question-sheet');
const verdict = (page: Page): Locator => page.locator('.verdict');
const own = (page: Page): Locator => page.getByRole('region', { name: 'Your practice' });
const field = (page: Page): Locator => sheet(page).getByLabel('Your answer');
const check = (page: Page) => page.getByRole('button', { name: 'Check', exact: true }).click();
const saidOf = async (page: Page): Promise<string> => spaced(await verdict(page).innerText());
const at = async (page: Page, id: string, more = '', seed = SEED): Promise<void> => {
  await page.goto(address(`exercise=${id}&seed=${seed}${more}`));
  await sheet(page).waitFor();
};
/** Opens an exercise with its numbers, works on it, and sees that the page never stumbled. */
const work = (
  id: string,
  use: (page: Page) => Promise<void>,
  more = '',
  options: Parameters<typeof look>[1] = still,
) =>
  look('about:blank', options, async (page) => {
    const errors: string[] = [];
    page.on('pageerror', ({ message }) => errors.push(message));
    await at(page, id, more);
    await use(page);
    expect(errors).toEqual([]);
  });
const answer = async (page: Page, text: string): Promise<string> => {
  await field(page).fill(text);
  await check(page);
  return saidOf(page);
};
const streak = (page: Page) => own(page).locator('[data-streak]').textContent();

describe('a number', () => {
  it('is right with what is taken in words, half right for a known turn, wrong with a way on', () =>
    work(NUMBER, async (page) => {
      const said = await answer(page, rightAt(NUMBER));
      expect(said).toMatch(/^✓ Right\. Anything from \d\.\d+ m to \d\.\d+ m is taken\.$/);
      expect(await verdict(page).getAttribute('data-look')).toBe('right');
      const { turns, value } = keyAt(NUMBER);
      expect(await answer(page, `${(turns[0]?.value ?? 0).toFixed(2)} m`)).toBe(
        `◑ Not quite: 50 % of the mark. ${turns[0]?.turn.say}`,
      );
      expect(await answer(page, `${(value * 1.2).toFixed(2)} m`)).toMatch(/^✗ Not right\. Try once more/);
      expect(await verdict(page).getAttribute('data-look')).toBe('wrong');
      // The worked solution has this variant’s own numbers and what is taken.
      await page.getByText('Worked solution').first().click();
      const solution = spaced(await sheet(page).locator('.solution').innerText());
      const template = templateOf(NUMBER);
      expect(solution).toContain(spaced(variantOf(template, recordOf, SEED).say(template.solution)));
      expect(solution).toContain(`${rightAt(NUMBER)}. Anything from `);
    })); // prettier-ignore

  it('is read in every spelling, and rounded too coarsely it says so', () =>
    work(NUMBER, async (page) => {
      const { value } = keyAt(NUMBER);
      for (const text of [
        `${(value * 100).toFixed(1)} cm`,
        value.toFixed(2).replace('.', ','),
        `${Math.floor(value / 0.3048)} ft ${((value % 0.3048) / 0.0254).toFixed(1)} in`,
        `${Math.floor(value * 100)}/100`,
      ])
        expect(await answer(page, text), text).toMatch(/^✓ Right/);
      expect(await answer(page, value.toFixed(1))).toContain('give a digit more');
      expect(await answer(page, value.toFixed(2))).not.toContain('give a digit more');
    }));

  it('that cannot be read, or could be two, is asked about and costs nothing', () =>
    work(NUMBER, async (page) => {
      const note = sheet(page).locator('.field-error');
      for (const text of ['', 'about so far', '2.31 kg', '1/0']) {
        expect(await answer(page, text), text).toMatch(/^Not marked yet: .*costs nothing/);
        expect(spaced((await note.textContent()) ?? '').length).toBeGreaterThan(12);
        // The sentence belongs to the field, and the field is where the reader is.
        expect(await field(page).getAttribute('aria-invalid')).toBe('true');
        const described = (await field(page).getAttribute('aria-describedby'))?.split(' ') ?? [];
        expect(described).toContain(await note.getAttribute('id'));
        expect(await field(page).evaluate((element) => element === document.activeElement)).toBe(true);
      }
      await answer(page, '3,145');
      expect(await note.textContent()).toContain('3.145 m or 3145 m');
      await note.getByRole('button', { name: '3.145 m' }).click();
      expect(await field(page).inputValue()).toBe('3.145 m');
      expect(await field(page).getAttribute('aria-invalid')).toBe(null);
      expect(await field(page).evaluate((element) => element === document.activeElement)).toBe(true);
      expect(await streak(page)).toMatch(/^Nothing has come right/);
      expect(await own(page).locator('.review-list li').count()).toBe(0);
      // None of it was a try: the first that counts is right.
      await answer(page, rightAt(NUMBER));
      expect(await streak(page)).toMatch(/^1 right in a row/);
    })); // prettier-ignore
});

describe('a choice', () => {
  const tick = (page: Page, text: string) => sheet(page).getByLabel(text).check();

  it('of several says of each what there is to say', () =>
    work(MANY, async (page) => {
      const template = templateOf(MANY) as Extract<Template, { kind: 'choice' }>;
      const right = template.options.filter((option) => option.right);
      const wrong = template.options.filter((option) => !option.right);
      await check(page);
      expect(await saidOf(page)).toBe('Tick at least one answer first.');
      await tick(page, right[0]?.text ?? '');
      await check(page);
      expect(await saidOf(page)).toBe(`◑ Not quite: 50 % of the mark. There is more that is right. ${right[0]?.feedback}`);
      await tick(page, wrong[0]?.text ?? '');
      await check(page);
      expect(await saidOf(page)).toMatch(/^✗ Not right\. A wrong one takes/);
      for (const option of [right[0], wrong[0]]) expect(await saidOf(page)).toContain(option?.feedback);
      for (const option of wrong.slice(1)) expect(await saidOf(page)).not.toContain(option.feedback);
      await sheet(page).getByLabel(wrong[0]?.text ?? '').uncheck();
      await tick(page, right[1]?.text ?? '');
      await check(page);
      expect(await saidOf(page)).toMatch(/^✓ Right\. ✓/);
    })); // prettier-ignore

  it('of one names it and gives the reason, right or wrong', () =>
    work(ONE, async (page) => {
      const template = templateOf(ONE) as Extract<Template, { kind: 'choice' }>;
      const variant = variantOf(template, recordOf, SEED);
      await check(page);
      expect(await saidOf(page)).toBe('Choose one of the answers first.');
      for (const option of template.options) {
        await sheet(page).getByLabel(spaced(variant.say(option.text)), { exact: true }).check();
        await check(page);
        expect(await saidOf(page)).toBe(`${option.right ? '✓ Right.' : '✗ Not right.'} ${spaced(variant.say(option.feedback))}`);
      }
    })); // prettier-ignore
});

describe('reading', () => {
  it('of a table: the cell that is asked for is right, another is not', () =>
    work(TABLE, async (page) => {
      const { drawn } = variantOf(templateOf(TABLE), recordOf, SEED);
      const table = sheet(page).getByRole('region', { name: 'Table to read from' });
      const heads = (await table.locator('thead th').allTextContents()).map(spaced);
      const column = heads.findIndex((text) => Number.parseFloat(text) === Number.parseFloat(drawn['subject-distance'] ?? '')); // prettier-ignore
      const row = table.locator('tbody tr', { has: page.getByRole('rowheader', { name: drawn['focal-length'] ?? '', exact: true }) }); // prettier-ignore
      expect(column).toBeGreaterThan(-1);
      const cells = await row.locator('td').allTextContents();
      expect(await answer(page, cells[column] ?? '')).toMatch(/^✓ Right/);
      expect(await answer(page, cells[(column + 1) % cells.length] ?? '')).toMatch(/^✗ Not right/);
      expect(await answer(page, 'this one')).toMatch(/^Not marked yet/);
    }));

  it('of a drawing: it is to scale, in the reader’s units, and does not say what is asked', () =>
    work(DRAWING, async (page) => {
      const right = rightAt(DRAWING);
      const drawing = sheet(page).getByRole('img');
      const seen = async () =>
        spaced(
          `${(await drawing.locator('text').allTextContents()).join(' | ')} ${await drawing.getAttribute('aria-label')}`,
        );
      expect(await seen()).not.toContain(spaced(right));
      expect(await seen()).toContain(' m ');
      expect(await answer(page, right)).toMatch(/^✓ Right/);
      expect(await answer(page, `${keyAt(DRAWING).value * 2} m`)).toMatch(/Not/);
      await page.getByRole('button', { name: 'imperial' }).click();
      await eventually(seen).toMatch(/[′″]/);
      expect(await seen()).not.toMatch(/\d m\b/);
      expect(spaced(await sheet(page).locator('p').first().innerText())).toMatch(/[′″]/);
      // Its scale bar is one of the marks, and what was typed is still meant in metres.
      expect(await field(page).inputValue()).toMatch(/ m$/);
    })); // prettier-ignore
});

it('the mistake: line and number each count half, and each is spoken of', () =>
  work(MISTAKE, async (page) => {
    const template = templateOf(MISTAKE) as Extract<Template, { kind: 'mistake' }>;
    const variant = variantOf(template, recordOf, SEED);
    const wrong = template.lines.find((line) => line.wrong);
    const other = template.lines.find((line) => !line.wrong);
    const pick = (line?: { readonly text: string }) => sheet(page).getByLabel(spaced(variant.say(line?.text ?? ''))).check(); // prettier-ignore
    const number = sheet(page).getByLabel('What should have come out');
    await number.fill(rightAt(MISTAKE));
    await check(page);
    expect(await saidOf(page)).toBe('Choose the line that is wrong first.');
    await pick(other);
    await check(page);
    expect(await saidOf(page)).toMatch(/^◑ Not quite: 50 % of the mark\. ✗/);
    expect(await saidOf(page)).toContain(spaced(variant.say(other?.feedback ?? '')));
    await pick(wrong);
    await check(page);
    expect(await saidOf(page)).toMatch(/^✓ Right\. Anything from .* is taken\. ✓/);
    await number.fill(`${keyAt(MISTAKE).value * 3}`);
    await check(page);
    expect(await saidOf(page)).toMatch(/^◑ Not quite: 50 % of the mark\. ✓/);
    await number.fill('a lot');
    await check(page);
    expect(await saidOf(page)).toMatch(/^Not marked yet/);
    expect(await saidOf(page)).not.toMatch(/[{}]/);
  }));

it('a design: every margin is shown, and what it was before', () =>
  work(DESIGN, async (page) => {
    const template = templateOf(DESIGN) as Extract<Template, { kind: 'design' }>;
    const boxes = sheet(page).getByRole('textbox');
    const set = async (settings: readonly string[]) => {
      for (const [i, text] of settings.entries()) await boxes.nth(i).fill(text);
      await check(page);
    };
    const held = sheet(page).locator('.held');
    const count = template.requirements.length;
    expect((await held.allTextContents()).join('')).toBe('');
    const accepted = template.accepted[0];
    const names = template.settings.map(({ name }) => name);
    await set(names.map((name, i) => (i === 2 ? '3.0 m' : (accepted?.[name] ?? ''))));
    expect(await saidOf(page)).toMatch(new RegExp(`^◑ [1-4] of ${count} are kept\\. Lines? [\\d, and]+ (is|are) not kept`));
    const first = (await held.allTextContents()).map(spaced);
    for (const text of first) expect(text).toMatch(/^(✓ kept|✗ not kept), (.+: )?.+ (to spare|missing)$/);
    expect(first.filter((text) => text.startsWith('✗')).length).toBeGreaterThan(0);
    await set(names.map((name) => accepted?.[name] ?? ''));
    expect(await saidOf(page)).toMatch(new RegExp(`^✓ All ${count} are kept\\. The brief is met`));
    const second = (await held.allTextContents()).map(spaced);
    expect(second.filter((text) => /\(before: .+ missing\)$/.test(text)).length).toBeGreaterThan(0);
    await set(['long', '1.85 m', '']);
    expect(await saidOf(page)).toMatch(/^Not marked yet/);
    expect(await sheet(page).locator('[aria-invalid]').count()).toBe(2);
    expect(await boxes.first().evaluate((element) => element === document.activeElement)).toBe(true);
  })); // prettier-ignore

it('a brief for tape and meter: the gap in numbers, its reasons, and points to judge by; no picture asked for', () =>
  work(BRIEF, async (page) => {
    const template = templateOf(BRIEF) as Extract<Template, { kind: 'practical' }>;
    const boxes = sheet(page).getByRole('textbox');
    await boxes.nth(0).fill('85');
    await boxes.nth(1).fill('0.9');
    await boxes.nth(2).fill('far');
    await check(page);
    expect(await saidOf(page)).toMatch(/^Not marked yet/);
    await boxes.nth(2).fill('2.15 m');
    await check(page);
    // 85 (1 + 900/36) = 2.21 m; 2.15 is 0.06 m or 2.7 % less.
    expect(await saidOf(page)).toContain('You read 2.15 m; from your other readings the formula gives 2.21 m. Your reading is 0.060 m, or 2.7 %, less.'); // prettier-ignore
    expect(await saidOf(page)).toContain(spaced(template.gap));
    for (const { text } of template.rubric) expect(await saidOf(page)).toContain(spaced(text));
    expect(await page.locator('input[type=file]').count()).toBe(0);
    // Judged by a person: no try, and nothing to come again.
    expect(await streak(page)).toMatch(/^Nothing has come right/);
    expect(await own(page).locator('.review-list li').count()).toBe(0);
  }));

describe('the way through', () => {
  it('hints come one by one, are read out, and leave the keyboard where it is', () =>
    work(NUMBER, async (page) => {
      const template = templateOf(NUMBER);
      const hint = sheet(page).getByRole('button', { name: /hint/i });
      for (const [i, text] of template.hints.entries()) {
        expect(await hint.textContent()).toBe(`Hint ${i + 1} of ${template.hints.length}`);
        await hint.press('Enter');
        expect(spaced((await page.locator('[aria-live=polite] .hints li').last().textContent()) ?? '')).toBe(spaced(text));
      }
      expect(await hint.textContent()).toBe('No more hints');
      expect(await hint.getAttribute('aria-disabled')).toBe('true');
      await hint.press('Enter');
      expect(await page.locator('.hints li').count()).toBe(template.hints.length);
      expect(await hint.evaluate((element) => element === document.activeElement)).toBe(true);
    })); // prettier-ignore

  it('another like this has other numbers and begins at its heading; its link is the same again', () =>
    work(NUMBER, async (page) => {
      const text = () => sheet(page).locator('p').first().innerText();
      const before = page.url();
      await page.getByRole('button', { name: 'Another like this' }).click();
      await eventually(() => Promise.resolve(page.url())).not.toBe(before);
      await eventually(() => page.evaluate(() => document.activeElement?.id)).toBe(
        'practice-question-title',
      );
      const { searchParams } = new URL(page.url());
      expect(searchParams.get('exercise')).toBe(NUMBER);
      const seed = Number(searchParams.get('seed'));
      const template = templateOf(NUMBER);
      expect(spaced(await text())).toBe(spaced(variantOf(template, recordOf, seed).say(template.text)));
      expect(await answer(page, rightAt(NUMBER, seed))).toMatch(/^✓ Right/);
      const same = await text();
      await page.reload();
      await sheet(page).waitFor();
      expect(await text()).toBe(same);
    })); // prettier-ignore

  it('by keyboard alone: choose, answer, check, read on, go on', () =>
    work(
      NUMBER,
      async (page) => {
        const active = () =>
          page.evaluate(() => {
            const { activeElement: element } = document;
            return element?.id !== '' ? element?.id : element.textContent.trim();
          });
        const tabs = async (until: string): Promise<string[]> => {
          const passed: string[] = [];
          for (let i = 0; i < 30; i++) {
            await page.keyboard.press('Tab');
            passed.push((await active()) ?? '');
            if (passed.at(-1) === until) return passed;
          }
          throw new Error(`Never came to ${until}: ${passed.join(', ')}`);
        };
        await page.locator('#practice-unit').focus();
        const passed = await tabs('practice-question-number');
        expect(passed.slice(0, 3)).toEqual(['practice-skill', 'practice-kind', 'practice-difficulty']); // prettier-ignore
        await page.keyboard.type(rightAt(NUMBER));
        await page.keyboard.press('Enter');
        await eventually(() => saidOf(page)).toMatch(/^✓ Right/);
        // Said to whoever listens, without pulling them away.
        expect(await verdict(page).getAttribute('role')).toBe('status');
        expect(await active()).toBe('practice-question-number');
        expect(await tabs('Another like this')).toEqual(['Check', 'Hint 1 of 2', 'Worked solution', 'Another like this']); // prettier-ignore
        await page.keyboard.press('Enter');
        await eventually(active).toBe('practice-question-title');
        await tabs('practice-question-number');
        await page.keyboard.type('3,145');
        await page.keyboard.press('Enter');
        await tabs('3.145 m');
        await page.keyboard.press('Enter');
        await eventually(active).toBe('practice-question-number');
        expect(await field(page).inputValue()).toBe('3.145 m');
        await page.goto(address(`exercise=${MANY}&seed=1`));
        await sheet(page).waitFor();
        await sheet(page).getByRole('checkbox').first().focus();
        await page.keyboard.press('Space');
        await page.keyboard.press('Enter');
        await eventually(() => saidOf(page)).toMatch(/^[✓◑✗]/);
      },
      '',
      wide,
    ));
});

describe('choosing', () => {
  const offers = async (page: Page, facet: string): Promise<readonly [string, number][]> => {
    const options = await page.locator(`#practice-${facet} option`).evaluateAll((all) =>
      all.map((one) => {
        const { value, disabled, hidden, textContent } = one as HTMLOptionElement;
        return { value, disabled, hidden: Boolean(hidden), text: textContent };
      }),
    );
    // What cannot be seen cannot be chosen, and the other way round.
    for (const { value, disabled, hidden } of options) expect(hidden, value).toBe(disabled);
    return options
      .filter(({ value, disabled }) => value !== '' && !disabled)
      .map(({ value, text }) => [value, Number(/\((\d+)\)$/.exec(text)?.[1])]);
  };

  it('offers only what has exercises, says how many, and keeps to it', () =>
    look(address(), wide, async (page) => {
      await sheet(page).waitFor();
      expect(await page.locator('.practice-count').textContent()).toBe(`${bank.length} of ${bank.length} exercises chosen.`); // prettier-ignore
      await page.getByLabel('Unit', { exact: true }).selectOption('the-sitting');
      for (const facet of ['skill', 'kind', 'difficulty'])
        for (const [value, count] of await offers(page, facet)) {
          await page.locator(`#practice-${facet}`).selectOption(value);
          expect(await page.locator('.practice-count').textContent()).toBe(`${count} of ${bank.length} exercises chosen.`);
          expect(count).toBeGreaterThan(0);
          expect(await page.locator('[data-exercise]:not([hidden])').count()).toBe(count);
          await eventually(() => sheet(page).count()).toBe(1);
          expect(new URL(page.url()).searchParams.get(facet)).toBe(value);
          await page.locator(`#practice-${facet}`).selectOption('');
        }
      expect((await offers(page, 'skill')).map(([value]) => value)).not.toContain('falloff');
      const units = await offers(page, 'unit');
      expect(units.reduce((sum, [, count]) => sum + count, 0)).toBe(bank.length);
      expect(units.map(([value]) => value)).toEqual(['focal-length', 'aperture', 'lighting', 'the-sitting', 'across']);
      // What is on the stage fits, whatever comes next.
      await page.getByLabel('Kind', { exact: true }).selectOption('design');
      for (let i = 0; i < 3; i++) {
        const before = page.url();
        await page.getByRole('button', { name: 'Another exercise' }).click();
        await eventually(() => Promise.resolve(page.url())).not.toBe(before);
        const id = new URL(page.url()).searchParams.get('exercise') ?? '';
        expect(templateOf(id).kind).toBe('design');
      }
      await page.reload();
      await sheet(page).waitFor();
      expect(await page.getByLabel('Kind', { exact: true }).inputValue()).toBe('design');
      expect(await page.getByLabel('Unit', { exact: true }).inputValue()).toBe('the-sitting');
      await page.getByRole('button', { name: 'Choose from all' }).click();
      expect(await page.locator('.practice-count').textContent()).toContain(`${bank.length} of`);
      expect(new URL(page.url()).searchParams.has('kind')).toBe(false);
    })); // prettier-ignore

  it.each([
    ['exercise=no-such-exercise', /an exercise that is not here/],
    ['exercise=%3Cscript%3Ealert(1)%3C/script%3E&seed=0', /an exercise that is not here/],
    [`exercise=${NUMBER}&exercise=${MANY}`, /an exercise that is not here/],
    ['unit=%3Cimg%20src=x%20onerror=alert(1)%3E', /a unit there are no exercises for/],
    ['unit=the-sitting&skill=falloff', /a skill there are no exercises for/],
    ['difficulty=9&kind=__proto__', /a kind .* and a difficulty/],
    [`exercise=${NUMBER}&seed=-1`, /^$/],
    [`exercise=${NUMBER}&seed=1e2`, /^$/],
    [`exercise=${NUMBER}&seed=999999999999`, /^$/],
    [`exercise=${NUMBER}&units=%22%3E%3Cb%3E`, /^$/],
    [`exercise=${NUMBER}&x=${'y'.repeat(6000)}`, /^$/],
  ])('takes nothing unsound from an address (%#)', (query, said) =>
    look('about:blank', still, async (page) => {
      const errors: string[] = [];
      page.on('pageerror', ({ message }) => errors.push(message));
      page.on('dialog', (dialog) => {
        errors.push(dialog.message());
        void dialog.dismiss();
      });
      await page.goto(address(query));
      await sheet(page).waitFor();
      expect(await page.locator('.practice-said').textContent()).toMatch(said);
      const { searchParams } = new URL(page.url());
      expect(searchParams.get('seed')).toMatch(/^\d{1,3}$/);
      templateOf(searchParams.get('exercise') ?? '');
      expect([...searchParams.keys()].every((key) => ['exercise', 'seed', 'unit', 'skill', 'kind', 'difficulty', 'units'].includes(key))).toBe(true); // prettier-ignore
      expect(page.url().length).toBeLessThan(300);
      expect(errors).toEqual([]);
    }),
  );
});

describe('a reader’s own practice', () => {
  const kept = (page: Page) =>
    page.evaluate(() => Object.entries(localStorage).filter(([key]) => key.includes('practice')));

  it('is kept when it is asked for and forgotten when that is, and not otherwise', () =>
    work(NUMBER, async (page) => {
      await answer(page, rightAt(NUMBER));
      expect(await streak(page)).toBe('1 right in a row at the first try; the longest row so far is 1.');
      expect(await kept(page)).toEqual([]);
      await page.reload();
      await sheet(page).waitFor();
      expect(await streak(page)).toMatch(/^Nothing/);

      await answer(page, rightAt(NUMBER));
      // A second try counts neither way.
      await answer(page, '100 m');
      expect(await streak(page)).toMatch(/^1 right/);
      const keep = page.getByRole('button', { name: 'Keep my practice in this browser' });
      const forget = page.getByRole('button', { name: 'Forget it' });
      await keep.press('Enter');
      expect(await page.locator('.practice-said').textContent()).toMatch(/kept in this browser, and nowhere else/);
      expect(await forget.evaluate((element) => element === document.activeElement)).toBe(true);
      expect(await kept(page)).toHaveLength(1);
      await page.reload();
      await sheet(page).waitFor();
      expect(await streak(page)).toMatch(/^1 right/);
      await answer(page, '100 m');
      expect(await streak(page)).toBe('0 right in a row at the first try; the longest row so far is 1.');
      expect(JSON.stringify(await kept(page))).toContain(NUMBER);
      // What is kept are ids and numbers, and nothing that was typed.
      expect(JSON.stringify(await kept(page))).not.toContain('100');

      await forget.press('Enter');
      expect(await kept(page)).toEqual([]);
      expect(await streak(page)).toMatch(/^Nothing/);
      expect(await keep.evaluate((element) => element === document.activeElement)).toBe(true);
      await page.reload();
      await sheet(page).waitFor();
      expect(await own(page).locator('.review-list li').count()).toBe(0);
    })); // prettier-ignore

  it('counts no answer that was read off the solution', () =>
    work(NUMBER, async (page) => {
      await page.getByText('Worked solution').first().click();
      await eventually(() => page.locator('.solution[open]').count()).toBe(1);
      await answer(page, rightAt(NUMBER));
      expect(await streak(page)).toMatch(/^Nothing/);
    }));

  it('brings what went wrong back when it is due, with the reason, and lets go of what comes right', async () => {
    const context = await reader(still);
    const page = await context.newPage();
    try {
      await page.clock.install({ time: new Date('2026-11-25T10:00:00Z') });
      await at(page, NUMBER);
      await answer(page, '100 m');
      const item = own(page).locator('.review-list li');
      expect(spaced((await item.textContent()) ?? '')).toBe('How far back for the frame? comes again tomorrow: it went wrong today');
      await page.getByRole('button', { name: 'Keep my practice' }).click();

      const days = async (day: number): Promise<void> => {
        await page.clock.setFixedTime(new Date(Date.UTC(2026, 10, 25 + day, 10, 0, 1)));
        await page.goto(address());
        await sheet(page).waitFor();
      };
      // One day: it is due, comes by itself, and says why.
      await days(1);
      expect(spaced((await item.textContent()) ?? '')).toContain('due now: it went wrong yesterday');
      expect(await item.getAttribute('data-due')).toBe('true');
      expect(await page.locator('.practice-about').textContent()).toContain('Here again: it went wrong yesterday.');
      let number = 0;
      for (const [wait, says] of [[3, 'once'], [7, 'twice'], [21, '3 times']] as const) {
        const { searchParams } = new URL(page.url());
        expect(searchParams.get('exercise')).toBe(NUMBER);
        await answer(page, rightAt(NUMBER, Number(searchParams.get('seed'))));
        expect(spaced((await item.textContent()) ?? '')).toContain(`comes again in ${wait} days: it has come right ${says}`);
        number += wait;
        await days(1 + number - 1);
        expect(await item.getAttribute('data-due'), 'a day early').toBe('false');
        await days(1 + number);
        expect(await item.getAttribute('data-due')).toBe('true');
      }
      const { searchParams } = new URL(page.url());
      await answer(page, rightAt(NUMBER, Number(searchParams.get('seed'))));
      expect(await item.count()).toBe(0);
      expect(await own(page).locator('[data-review]').textContent()).toContain('Nothing is waiting.');
      expect(await streak(page)).toMatch(/^4 right/);
    } finally {
      await context.close();
    }
  }); // prettier-ignore

  it('lets a reader take up what is waiting before it is due', () =>
    work(NUMBER, async (page) => {
      await answer(page, '100 m');
      await page.getByRole('button', { name: 'Another exercise' }).click();
      await eventually(() => Promise.resolve(new URL(page.url()).searchParams.get('exercise'))).not.toBe(NUMBER); // prettier-ignore
      await own(page)
        .getByRole('button', { name: templateOf(NUMBER).title })
        .click();
      await eventually(() => Promise.resolve(new URL(page.url()).searchParams.get('exercise'))).toBe(NUMBER); // prettier-ignore
    }));

  it('is left alone where what is kept is damaged', () =>
    look('about:blank', still, async (page) => {
      await page.goto(address());
      await page.evaluate(() => {
        localStorage.setItem('sbn:practice:v1', '{"streak":-1,"best":"<b>","due":[{}]}');
      });
      await page.reload();
      await sheet(page).waitFor();
      expect(await streak(page)).toMatch(/^Nothing/);
    }));
});

describe('units and decimal marks', () => {
  it('change question, field and what is taken together; what was typed keeps its meaning', () =>
    work(NUMBER, async (page) => {
      const { value } = keyAt(NUMBER);
      await answer(page, value.toFixed(2));
      await page.getByRole('button', { name: 'imperial' }).click();
      await eventually(() => sheet(page).locator('p').first().innerText()).toMatch(/[′″]/);
      expect(await sheet(page).locator('.field-unit').textContent()).toBe('ft');
      expect(await field(page).inputValue()).toBe(`${value.toFixed(2)} m`);
      expect(await saidOf(page)).toMatch(/^✓ Right\. Anything from \d+′ .*″ to \d+′ .*″ is taken/);
      expect(new URL(page.url()).searchParams.get('units')).toBe('imperial');
      // A bare number is in the unit that stands beside the field.
      expect(await answer(page, (value / 0.3048).toFixed(2))).toMatch(/^✓ Right/);
      expect(await answer(page, value.toFixed(2))).toMatch(/Not/);
      await answer(page, (value / 0.3048).toFixed(2));
      await page.getByRole('button', { name: 'metric' }).click();
      await eventually(() => field(page).inputValue()).toBe(`${(value / 0.3048).toFixed(2)} ft`);
      expect(await saidOf(page)).toMatch(/^✓ Right/);
    }));

  it('are written with a comma where the reader’s language has one, in drawings too', () =>
    work(
      DRAWING,
      async (page) => {
        const texts = sheet(page).locator('text');
        const marks = async () => (await texts.allTextContents()).join(' ');
        expect(await marks()).toMatch(/\d,\d\d\sm/);
        expect(await marks()).not.toMatch(/\d\.\d/);
        expect(spaced(await sheet(page).locator('p').first().innerText())).toMatch(/\d,\d\d m/);
        const { value } = keyAt(DRAWING);
        expect(await answer(page, value.toFixed(2).replace('.', ','))).toMatch(/^✓ Right\. Anything from \d,\d+ m/); // prettier-ignore
      },
      '',
      { ...still, locale: 'de-DE' },
    ));
});

describe('the page', () => {
  const kinds = [NUMBER, MANY, ONE, TABLE, DRAWING, MISTAKE, DESIGN, BRIEF];

  it.each(kinds)('is accessible and fits before and after an answer: %s', (id) =>
    work(id, async (page) => {
      const look = async (when: string): Promise<void> => {
        for (const { wrong, screen } of await judge(page)) expect(wrong, `${when}, ${screen}`).toEqual([]);
        await page.emulateMedia({ colorScheme: 'light' });
        for (const width of [320, 390, 1280]) {
          await page.setViewportSize({ width, height: 844 });
          expect(await page.evaluate(sticksOut), `${when}, ${width} px`).toEqual([]);
        }
        await page.setViewportSize({ width: 390, height: 844 });
        expect(await page.evaluate(tooSmall), when).toEqual([]);
      };
      await look('before');
      for (const box of await sheet(page).getByRole('textbox').all()) await box.fill('3,145');
      await check(page);
      await look('unreadable');
      for (const box of await sheet(page).getByRole('textbox').all()) await box.fill('1.5');
      for (const box of await sheet(page).getByRole('checkbox').all()) await box.check();
      for (const box of await sheet(page).getByRole('radio').all()) await box.check();
      await sheet(page).getByRole('button', { name: /^Hint/ }).click();
      await check(page);
      await page.getByText('Worked solution').first().click();
      expect(await saidOf(page)).toMatch(/^[✓◑✗≈]/);
      await look('after');
    }), 60_000); // prettier-ignore

  it('shifts nothing under whoever comes back to it', async () => {
    const context = await reader(wide);
    const page = await context.newPage();
    try {
      await page.addInitScript(() => {
        const due = Array.from({ length: 3 }, (_none, i) => ({ template: ['step-back-for-the-frame', 'what-changes-the-nose', 'tape-and-frame'][i], box: 0, at: 1 })); // prettier-ignore
        localStorage.setItem('sbn:practice:v1', JSON.stringify({ streak: 2, best: 3, due }));
        new PerformanceObserver((list) => {
          for (const entry of list.getEntries()) {
            const { value } = entry as PerformanceEntry & { value: number };
            const sum = Number(document.documentElement.dataset['shift'] ?? 0) + value;
            document.documentElement.dataset['shift'] = String(sum);
          }
        }).observe({ type: 'layout-shift', buffered: true });
      });
      await page.goto(address('unit=focal-length'));
      await sheet(page).waitFor();
      expect(await own(page).locator('.review-list [data-due=true]').count()).toBe(3);
      expect(Number((await page.locator('html').getAttribute('data-shift')) ?? 0)).toBeLessThan(0.05); // prettier-ignore
    } finally {
      await context.close();
    }
  });

  it('reads as exercises with answers where there is no script', () =>
    look(address(), { ...still, javaScriptEnabled: false }, async (page) => {
      expect(await page.locator('.practice').isVisible()).toBe(false);
      const entries = page.locator('[data-exercise]');
      expect(await entries.count()).toBe(bank.length);
      for (const id of kinds) {
        const entry = page.locator(`#exercise-${id}`);
        const template = templateOf(id);
        const variant = variantOf(template, recordOf, 0);
        await entry.locator('summary').first().click();
        const text = spaced((await entry.textContent()) ?? '');
        expect(text).toContain(template.title);
        const solution = spaced(variant.say(template.solution)).replaceAll(/[*’']/g, '');
        expect(text.replaceAll(/[*’']/g, '')).toContain(solution.slice(0, 40));
        if ('ask' in template) expect(text).toContain(spaced(rightAt(id, 0)));
        await entry.locator('details > summary').click();
        expect(await entry.locator('details').getAttribute('open')).not.toBe(null);
      }
      expect(await page.evaluate(sticksOut)).toEqual([]);
    })); // prettier-ignore
});
