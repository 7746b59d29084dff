/** Something a person taps or types into, by what it is and what it is called; within a part of the page, where names repeat. */
export type Step =
  | {
      readonly tap: readonly [role: 'link' | 'button' | 'radio', name: string | RegExp];
      readonly within?: string;
    }
  | {
      readonly type: readonly [role: 'textbox' | 'searchbox', name: string | RegExp];
      readonly text: string;
      readonly within?: string;
    };

/** A question as a photographer would word it, the way to its answer from the home page, and the formula that knows it. */
export interface Task {
  readonly asks: string;
  readonly steps: readonly Step[];
  /** Where the number is read. */
  readonly read: string;
  readonly formula: string;
  /** Inputs as evaluate takes them. */
  readonly given: Readonly<Record<string, string>>;
  /** The result's id. */
  readonly result: string;
}

export const tasks: readonly Task[] = [];
