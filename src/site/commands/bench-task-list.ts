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

/** Where the number is read: in a part of the page, or in a table's cell, by the headings of its line and column. */
export type Reading = { readonly sentence: string } | { readonly cell: readonly [string, string] };

/** A question as a photographer would word it, the way to its answer from the home page, and the formula that knows it. */
export interface Task {
  readonly asks: string;
  readonly steps: readonly Step[];
  readonly read: Reading;
  readonly formula: string;
  /** Inputs as evaluate takes them. */
  readonly given: Readonly<Record<string, string>>;
  /** The result's id. */
  readonly result: string;
}

const tables: Step = { tap: ['link', 'Tables'], within: '.masthead' };

export const tasks: readonly Task[] = [
  {
    asks: '85 mm, head and shoulders, full frame: how far back?',
    steps: [tables, { tap: ['link', /^How far back/], within: 'main' }],
    read: { cell: ['85', 'head and shoulders'] },
    formula: 'framing-distance',
    given: {
      format: '36x24',
      orientation: 'portrait',
      'focal-length': '85mm',
      'frame-height': '0.348m',
    },
    result: 'subject-distance',
  },
  {
    asks: 'f/4 at 2.2 m: how deep is it sharp?',
    steps: [tables, { tap: ['link', /^How deep/], within: 'main' }],
    read: { cell: ['2.2', 'f/4'] },
    formula: 'depth-of-field',
    given: {
      format: '36x24',
      'focal-length': '85mm',
      'f-number': 'f/4',
      'subject-distance': '2.2m',
    },
    result: 'total',
  },
  {
    asks: 'My room is 4.2 m: longest lens for a frame of 90 cm?',
    steps: [
      { tap: ['link', 'Fit in the room'], within: 'main' },
      { type: ['textbox', 'Room length'], text: '4.2' },
    ],
    read: { sentence: '.result' },
    formula: 'room-fit',
    given: {
      format: '36x24',
      orientation: 'portrait',
      'frame-height': '0.9m',
      'backdrop-distance': '1.5m',
      'backdrop-clearance': '0.3m',
      'camera-room': '0.8m',
      'room-length': '4.2m',
    },
    result: 'longest-focal-length',
  },
  {
    asks: '20° grid at 2 m: how wide is the spot?',
    steps: [tables, { tap: ['link', /^How wide is the spot/], within: 'main' }],
    read: { cell: ['2.0', '20'] },
    formula: 'beam-spread',
    given: { angle: '20deg', distance: '2m' },
    result: 'width',
  },
  {
    asks: 'Light from 1.2 m to 1.7 m: how many stops do I lose?',
    steps: [
      { tap: ['link', 'Search'], within: '.masthead' },
      { type: ['searchbox', /./], text: 'fall-off 1.2 m 1.7 m' },
    ],
    read: { sentence: '.hit-says' },
    formula: 'falloff',
    given: { near: '1.2m', far: '1.7m' },
    result: 'stops',
  },
];
