/** What a student enters in a course system: a number, options by what they say, or both where both are asked. */
export interface Entered {
  readonly number?: string;
  readonly options?: readonly string[];
}

/** A question as a course system has it after import. */
export interface CourseItem {
  readonly title: string;
  /** All that is shown before the answer, as text. */
  readonly shown: string;
  /** The mark from 0 to 1, and what is said; no mark where a person gives it. */
  readonly mark: (entered: Entered) => {
    readonly credit: number | undefined;
    readonly say: string;
  };
}

/** A number as course systems read it: digits, a point, an exponent; anything else is none. */
export const numberIn = (text: string): number | undefined =>
  /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/i.test(text) ? Number(text) : undefined;

/** HTML as its words. */
export const wordsOf = (html: string): string =>
  html
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&')
    .replaceAll(/\s+/g, ' ')
    .trim();
