import { describe, expect, it } from 'vitest';
import { formulas } from '../src/formulas.ts';
import { namesOf, termFor } from '../src/site/named-terms.ts';
import { readLessons, readMarkdown } from './support/content.ts';
import { proseOf } from './support/prose.ts';
import { ELSEWHERE, finderOf, termNames, watched } from './support/terms.ts';

const terms = termNames();

/** What of a lesson’s text uses a name before it is a <Term>, with a few words about it. */
const unexplained = (body: string, elsewhere: readonly string[] = []): string[] => {
  const prose = proseOf(body);
  return finders.flatMap(({ id, finder }) => {
    const found = elsewhere.includes(id) ? null : finder.exec(prose);
    if (!found) return [];
    const linked = body.search(new RegExp(`<Term\\s+id="${id}"`));
    if (linked >= 0 && linked < found.index) return [];
    const around = prose.slice(Math.max(0, found.index - 20), found.index + found[0].length + 20);
    return [`${id}: “…${around.replaceAll(/\s+/g, ' ')}…”`];
  });
};
const finders = terms.flatMap(({ id, names }) => {
  const looked = watched(names);
  return looked.length > 0 ? [{ id, finder: finderOf(looked) }] : [];
});

describe('a term is explained where a page first uses it', () => {
  it.each(readLessons())('in lesson $order $slug', ({ body, slug }) => {
    expect(unexplained(body, ELSEWHERE[slug])).toEqual([]);
  });

  it.each(['about', 'safety'])('on the page %s', (page) => {
    expect(unexplained(readMarkdown(`content/pages/${page}.mdx`).body)).toEqual([]);
  });

  it('or this test says which is not', () => {
    expect(unexplained('A soft\nproof first.\n')).toEqual([expect.stringContaining('soft-proof')]);
    expect(unexplained('Two apertures. <Term id="aperture">Aperture</Term>')).toHaveLength(1);
    expect(unexplained('<Term id="aperture">Apertures</Term>, two apertures.')).toEqual([]);
  });

  it('but not in code, maths, links, headings and names', () => {
    const quiet =
      '## Aperture\n\n`aperture` [the aperture](/x/) <X formula="aperture" /> $aperture$';
    expect(unexplained(quiet)).toEqual([]);
  });
});

/** Names of inputs and results that no term explains, by the reason. Yes-or-no results need none: they are sentences. */
const UNEXPLAINED: Readonly<Record<string, string>> = {
  'an everyday length; its line in the symbol list says from where to where':
    'ahead distance, angle for spot, behind angle, body clearance, camera distance, ceiling, ceiling distance, ' +
    'child offset, compare distance, depth, distance, distance 1 percent, distance for evenness, distance for spot, ' +
    'distance tenth stop, edge, face width, far, far distance, far place, floor distance, foot radius, front height, ' +
    'front width, gap, head height, height, knees ahead, least distance, length, length needed, light aside, ' +
    'light behind, light clearance, light distance, light height, light place, lower edge, near, near distance, ' +
    'near place, needed height, needed width, nose length, offset, opening, other width, print height, print width, ' +
    'pull height, reach ahead, reach behind, sensor to subject, set depth, shift, size, source height, source width, ' +
    'spare, spare side, spare top, toes ahead, total, upper edge, wanted width, width',
  'an everyday mass, angle, count, speed or time':
    'angle between, column mass, factor, foot speed, head speed, legs, rate, speed, turn, wait',
  'the size of a file, counted out':
    'file height, file pixel height, file pixel width, file width, largest height, largest width, least height, ' +
    'least width, pixel height, pixel width, pixels, pixels lost',
  'money or a count of sittings, in the words of any shop':
    'booked sittings, bookings, card fee, currency, editing hours, hourly, price, sitting fee, sitting hours, ' +
    'sittings, tax',
  'a number whose own line says what is compared with what':
    'after, against face, ambient circles, before, binding side, diagonal divisor, difference, error, face share, ' +
    'lights, margin, over, percent, plane stops, remainder, rise',
  'a choice whose options say it': 'diffused, shape, step',
};

describe('the names in the records', () => {
  const names = namesOf(terms);
  const listed = new Set(Object.values(UNEXPLAINED).flatMap((list) => list.split(', ')));

  it('are terms, or on the list above, which names nothing that is one everywhere', async () => {
    const records = await Promise.all(Object.values(formulas).map((load) => load()));
    const without = records.flatMap(({ default: { id, inputs, outputs } }) =>
      [...Object.values(inputs), ...Object.values(outputs)]
        .filter(
          (one) =>
            !('kind' in one && one.kind === 'yes-no') && termFor(names, id, one) === undefined,
        )
        .map(({ name }) => name),
    );
    expect([...new Set(without)].filter((name) => !listed.has(name)).toSorted()).toEqual([]);
    expect([...listed].filter((name) => !without.includes(name)).toSorted()).toEqual([]);
  });

  it('lead to terms that exist', async () => {
    const ids = new Set(terms.map(({ id }) => id));
    for (const load of Object.values(formulas)) {
      const { id, inputs, outputs } = (await load()).default;
      for (const one of [...Object.values(inputs), ...Object.values(outputs)]) {
        const term = termFor(names, id, one);
        if (term !== undefined) expect(ids, `${id}: ${one.name}`).toContain(term);
      }
    }
  });

  it('have one term for one name', () => {
    const all = terms.flatMap((term) => term.names.map((name) => name.toLowerCase()));
    expect(all.filter((name, index) => all.indexOf(name) !== index)).toEqual([]);
  });
});
