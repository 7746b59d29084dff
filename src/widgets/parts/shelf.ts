/** One kept thing, as a page’s script has it: the page hands the door to the browser’s storage in. */
export interface Shelf<T> {
  readonly recall: () => T | undefined;
  /** Nothing to keep takes it away; the answer is what to tell the reader where it could not be done. */
  readonly keep: (value: T | undefined) => string | undefined;
}
