import type { Template } from '../../exercises/template.ts';

/** One exercise as the site hands it out. */
export interface Entry {
  readonly template: Template;
  /** Empty where it crosses units. */
  readonly unit: string;
  readonly lesson: string;
}

let fetched: Promise<readonly Entry[]> | undefined;

/** The whole bank, fetched once; from what is kept for use without a signal where there is none. */
export const fetchBank = (): Promise<readonly Entry[]> => {
  fetched ??= fetch(`${import.meta.env.BASE_URL.replace(/\/?$/, '/')}bank.json`).then(
    (response) => {
      if (!response.ok) throw new Error(`The exercises could not be fetched (${response.status}).`);
      return response.json() as Promise<readonly Entry[]>;
    },
  );
  // What failed once is tried again.
  fetched.catch(() => {
    fetched = undefined;
  });
  return fetched;
};
