import { startsOf } from '../../formula/starts.ts';
import { kitOf, type Kit } from '../../sitting/kit.ts';
import { sayInput } from '../../formula/show.ts';
import { all, button, make, one } from './dom.ts';
import { startsWith } from './kit-starts.ts';
import type { LivePlate } from './live.ts';
import { PlateState } from './plate-state.ts';

/** More would not stand on the line of the usual ones. */
const MOST_PRESETS = 6;

const kitIn = (text: string): Kit | undefined => {
  try {
    return kitOf(JSON.parse(text));
  } catch {
    return undefined;
  }
};

/** The kit's values that a plate took, as its reader would say them. */
const sayKit = ({ state }: LivePlate, took: readonly string[]): string => {
  const { formula } = state.calculator;
  const said = new Map(
    took.flatMap((key) => {
      const input = formula.inputs[key];
      if (!input) return [];
      const text = sayInput(input, state.starts[key], state.style);
      // Of a format its sides say enough.
      return [[input.name, input.name === 'format' ? text.replace(/^.*, /, '') : text] as const];
    }),
  );
  // Sides that are known together are said together: your room 4.20 × 3.10 × 2.40 m.
  const sides = (word: string, ...names: readonly string[]): void => {
    const texts = names.flatMap((name) => said.get(name) ?? []);
    if (!said.has(names[0] ?? '') || !said.has(names[1] ?? '')) return;
    for (const name of names) said.delete(name);
    const whole = texts.join(' × ');
    said.set(
      '',
      [said.get(''), `${word} ${whole.replaceAll(/ m(?= ×)/g, '')}`].filter(Boolean).join(', '),
    );
  };
  sides('your room', 'room length', 'room width', 'ceiling');
  sides('your backdrop', 'backdrop width', 'backdrop height');
  const alone = [
    'format',
    'focal length',
    '',
    ...[...said.keys()].filter((name) => name.includes('f-number')),
  ];
  return [...said]
    .map(([name, text]) => (alone.includes(name) ? text : `${name} ${text}`))
    .join(', ')
    .replaceAll(/(?<=[\d′]) (?=(?:mm|m|×)(?![a-z]))|(?<=×) /g, '\u00a0');
};

/** The lenses one owns as the focal lengths to choose from, where they all find room. */
const offer = ({ section }: LivePlate, { lenses }: Kit): void => {
  const place = one(section, '[data-id="focal-length"] .field-presets');
  const owned = [...new Set(lenses.map((lens) => Number.parseFloat(lens['focal-length'])))];
  if (!place || owned.length === 0 || owned.length > MOST_PRESETS) return;
  place.replaceChildren(
    ...owned
      .sort((a, b) => a - b)
      .map((focal) =>
        button(String(focal), { 'data-put': String(focal / 1000), 'aria-label': `${focal} mm` }),
      ),
  );
};

/**
 * Holds the size of what the kit's numbers may make larger or smaller, so that nothing under it moves while they come
 * in; let go once the reader changes something. The style sheet has kept a line more for the result.
 */
const hold = (section: HTMLElement): void => {
  const parts = all(section, '.drawing svg, .result, .plate-formula');
  for (const part of parts) {
    const { style } = part;
    const size = `${part.getBoundingClientRect().height}px`;
    if (part.matches('.result')) Object.assign(style, { minBlockSize: size, paddingBlockEnd: '0' });
    else style.blockSize = size;
  }
  const free = (): void => {
    for (const { style } of parts) {
      style.removeProperty('block-size');
      style.removeProperty('min-block-size');
    }
  };
  section.addEventListener('input', free, { once: true });
  addEventListener('resize', free, { once: true });
};

/**
 * A kit is kept in this browser: the plate starts from it, and says so where the page has kept the place.
 *
 * Model: what the reader has typed meanwhile stays, and the kit fills the other fields. A plate that shows a link’s
 * numbers keeps them; its reset goes to the kit.
 * @param text the kit as it is kept, sound or not
 */
export const begin = (plate: LivePlate, text: string, linked: boolean): void => {
  const { state, section } = plate;
  const { formula } = state.calculator;
  const kit = kitIn(text);
  const line = one(section, '.kit-line');
  if (!line) {
    // No number of this plate is in a kit, but the units are.
    if (!kit?.system) return;
    hold(section);
    if (state.adopt({ ...state.style, system: kit.system })) plate.show();
    return;
  }
  const change = make('a', 'Change the kit', {
    href: `${import.meta.env.BASE_URL.replace(/\/?$/, '/')}kit/`,
  });
  if (!kit) {
    // Said once on a page, where a reader meets it first.
    if (line === one(document.body, '.kit-line'))
      line.append('The kit kept in this browser is damaged, and no plate uses it. ', change);
    return;
  }
  const own = startsOf(formula);
  const { starts, took, gaveWay } = startsWith(formula, kit);
  const usual = [...(one(section, '[data-id="focal-length"] .field-presets')?.children ?? [])];

  const say = (words: string, act?: string): void => {
    const ways = make('span', '', { class: 'needs-script' });
    ways.append(change, ...(act ? [' · ', button(act, { 'data-kit': act })] : []));
    line.replaceChildren(`${words} `, ways);
  };
  const sayUse = (): void => {
    if (took.length === 0) {
      say(gaveWay || 'Your kit has no number for this plate.');
      return;
    }
    const differs = took.some((key) => JSON.stringify(starts[key]) !== JSON.stringify(own[key]));
    const lesson =
      differs && one(section, '.plate-caption > a')
        ? ' The text here speaks of the harbour set.'
        : '';
    say(
      `Starts from your kit: ${sayKit(plate, took)}.${lesson}${gaveWay && ` ${gaveWay}`}`,
      'Without it',
    );
  };

  const fresh = new PlateState(state.calculator);
  fresh.adopt(state.style);
  const typed = Object.keys(formula.inputs).filter(
    (key) => state.field(key).text !== fresh.field(key).text,
  );
  state.starts = starts;
  if (kit.system) state.adopt({ ...state.style, system: kit.system });
  if (linked) say('Shows the link’s numbers, not your kit’s.', 'With the kit');
  else {
    hold(section);
    for (const key of Object.keys(formula.inputs))
      if (starts[key] !== own[key] && !typed.includes(key)) state.put(key, starts[key]);
    sayUse();
  }
  offer(plate, kit);
  plate.show();

  section.addEventListener('click', ({ target }) => {
    const pressed = target instanceof Element ? target.closest<HTMLElement>('button') : null;
    const { kit: asked, do: act } = pressed?.dataset ?? {};
    if (act === 'reset' && state.starts === starts) sayUse();
    if (!asked) return;
    const without = asked === 'Without it';
    state.starts = without ? own : starts;
    state.reset();
    if (without) {
      one(section, '[data-id="focal-length"] .field-presets')?.replaceChildren(...usual);
      say('Starts without your kit.', 'With the kit');
    } else {
      offer(plate, kit);
      sayUse();
    }
    one(line, 'button')?.focus();
    plate.changed();
  });
};
