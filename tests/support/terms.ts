import { basename } from 'node:path';
import { readMarkdown } from './content.ts';
import { filesUnder } from './files.ts';

export interface TermNames {
  readonly id: string;
  /** The term, then what else it is called. */
  readonly names: readonly string[];
}

/** Lessons in which a watched name is something else. */
export const ELSEWHERE: Readonly<Record<string, readonly string[]>> = {
  // The standards’ body, beside the number of a toy standard.
  props: ['iso'],
};

export const termNames = (): TermNames[] =>
  filesUnder('content/glossary').map((file) => {
    const { data } = readMarkdown(file);
    const also = Array.isArray(data['also']) ? data['also'].map(String) : [];
    return { id: basename(file, '.md'), names: [String(data['term']), ...also] };
  });

/**
 * Names of several words that lessons also use in another sense, or that describe rather than name.
 * All other names of several words are looked for in every lesson.
 */
const LOOSE = new Set([
  'arm’s reach',
  'black card',
  'edge of the beam',
  'full stop',
  'line of sight',
  'room light',
  'studio flash',
]);

/** Single words that a lesson on portraits uses in one sense alone. */
const PLAIN = new Set([
  ...[
    'acuity',
    'alias',
    'ambient',
    'aperture',
    'arcminute',
    'backdrop',
    'ballast',
    'boom',
    'breaker',
    'capacitor',
  ],
  ...[
    'catchlight',
    'chromaticity',
    'circuit',
    'counterweight',
    'crossbar',
    'deflector',
    'diagonal',
    'diffraction',
  ],
  ...[
    'diffuser',
    'enlargement',
    'f-number',
    'fall-off',
    'finder',
    'gel',
    'illuminance',
    'inrush',
    'ISO',
    'joule',
  ],
  ...[
    'kelvin',
    'lux',
    'magnification',
    'mired',
    'no-show',
    'occluder',
    'perspective',
    'platform',
    'reflectance',
  ],
  ...['sandbag', 'sensor', 'shutter', 'softbox', 'spotter', 'stand-in', 'steradian', 'terminator'],
  ...[
    'transmission',
    'umbrella',
    'voltage',
    'watt',
    'wavelength',
    'camera-left',
    'camera-right',
    'modifier',
  ],
  ...['break-even', 'honeycomb', 'penumbra'],
]);

/** The names that every lesson must explain where it first uses them. */
export const watched = (names: readonly string[]): readonly string[] =>
  names.filter((name) => (/[ ,]/.test(name) ? !LOOSE.has(name) : PLAIN.has(name)));

const CAPITALS = /^[A-Z]{2}/;
const escaped = (name: string): string => name.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`);

/** Finds any of the names, singular or plural, over the end of a line too. */
export const finderOf = (names: readonly string[]): RegExp =>
  new RegExp(
    String.raw`(?<![\w’-])(?:${names
      .map((name) =>
        (CAPITALS.test(name)
          ? escaped(name)
          : escaped(name).replace(/^[A-Za-z]/, (a) => `[${a.toLowerCase()}${a.toUpperCase()}]`)
        ).replaceAll(' ', String.raw`\s+`),
      )
      .toSorted((a, b) => b.length - a.length)
      .join('|')})(?:e?s)?(?![\w-])`,
  );
