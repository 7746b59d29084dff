import { all, one } from './dom.ts';
import type { LivePlate } from './live.ts';
import { readQuery } from './read-link.ts';

/** Loads the state a query holds, where it holds one for this plate. */
const take = ({ state, changed }: LivePlate, query: string): boolean => {
  const loaded = readQuery(state.calculator.formula, query);
  if (loaded) {
    state.load(loaded);
    changed();
  }
  return loaded !== undefined;
};

/** A case was pressed: it is loaded, and its result comes into sight. */
export const load = (plate: LivePlate, query: string): void => {
  if (take(plate, query)) one(plate.section, '.result-block')?.scrollIntoView({ block: 'nearest' });
};

/**
 * The page was opened with a query, or by a reader whose kit is kept. A query speaks to one plate: the one its hash
 * names, else the first on the page that has one of its keys, else the first of all, which says that it knows none of
 * them. The others start from the kit.
 */
export const open = (plate: LivePlate): void => {
  const named = document.getElementById(location.hash.slice(1))?.closest('[data-plate]');
  const keys = [...new URLSearchParams(location.search).keys()];
  const plates = all(document, '[data-plate]');
  const first = plates.find((one) =>
    all(one, '[data-id]').some(({ dataset }) => keys.includes(dataset['id'] ?? '')),
  );
  const linked = (named ?? first ?? plates[0]) === plate.section && take(plate, location.search);
  const { kit } = document.documentElement.dataset;
  if (kit) void import('./kit.ts').then(({ begin }) => begin(plate, kit, linked));
};

/** Copies the plate's address, or shows it where the browser will not. */
export const copy = async ({ address, say }: LivePlate): Promise<void> => {
  const link = address();
  try {
    await navigator.clipboard.writeText(link);
    say('Link copied.');
  } catch {
    say(`Copy this address: ${link}`);
  }
};
