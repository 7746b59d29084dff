/**
 * Bad input, in a sentence fit for the reader: what is wrong, what is allowed, what to try.
 * `input` is the id of the field it belongs to, so that a page can set the sentence beside it.
 */
export class InputError extends RangeError {
  readonly input: string | undefined;
  constructor(message: string, input?: string) {
    super(message);
    this.input = input;
  }
}

/** Text with two honest readings: a field asks which is meant, a command refuses and shows both. */
export class AmbiguousError extends InputError {
  readonly readings: readonly string[];
  constructor(typed: string, readings: readonly string[], input?: string) {
    super(`“${typed}” could be ${readings.join(' or ')}. Write it as one of these.`, input);
    this.readings = readings;
  }
}
