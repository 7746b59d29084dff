import { spelt } from '../formula/notation/spelt.ts';
import { plates, type PlateEntry } from './plates.ts';

export interface SymbolUse {
  readonly name: string;
  /** As a reader knows it; nothing for a bare number and for a choice. */
  readonly unit: string | undefined;
  readonly plates: readonly PlateEntry[];
}

export interface SymbolEntry {
  /** For `/glossary/#symbol-…`. */
  readonly id: string;
  readonly tex: string;
  readonly uses: readonly SymbolUse[];
}

const UNITS: Readonly<Record<string, string | undefined>> = {
  '1': undefined,
  count: undefined,
  EUR: 'money',
  'cd/m2': 'cd/m²',
  deg: '°',
  arcmin: '′',
  stop: 'stops',
  'f/': 'f/',
  '1/min': 'a minute',
  '1/s': 'a second',
};

/**
 * The part of an address that names a symbol; it never changes while the TeX does not.
 *
 * @example symbolId("N'") // 'symbol-N-prime'
 * @example symbolId('\\theta_h') // 'symbol-theta_h'
 */
export const symbolId = (tex: string): string =>
  `symbol-${tex
    .replaceAll(/\\(?:text|mathrm)\{([^{}]*)\}/g, '$1')
    .replaceAll(/_\{([^{}]*)\}/g, '_$1')
    .replaceAll("'", '-prime')
    .replaceAll('/', '-over-')
    .replaceAll(/[^\w-]+/g, ' ')
    .trim()
    .replaceAll(' ', '-')}`;

/** Latin before Greek, by the letter, small before large. */
const order = (tex: string): string => {
  const plain = tex.replaceAll(/\\(?:text|mathrm)\{([^{}]*)\}/g, '$1');
  return `${/^\\(?!ell)/.test(plain) ? '1' : '0'}${plain.replaceAll(/[\\{}_]/g, '')}`;
};

/** Every symbol of every record, with what it stands for and the plates that use it so. */
export const symbols = async (): Promise<readonly SymbolEntry[]> => {
  const found = new Map<string, Map<string, { use: SymbolUse; plates: PlateEntry[] }>>();
  for (const plate of await plates()) {
    const { inputs, outputs, symbols: further = [] } = plate.formula;
    const named = [...Object.values(inputs), ...Object.values(outputs)].map((one) => {
      const unit = 'unit' in one ? one.unit : undefined;
      return {
        tex: one.tex,
        name: spelt(one),
        unit: unit !== undefined && Object.hasOwn(UNITS, unit) ? UNITS[unit] : unit,
      };
    });
    const described = further.map(({ tex, means }) => ({ tex, name: means, unit: undefined }));
    for (const { tex, name, unit } of [...named, ...described]) {
      // Two symbols, or a small sum, are explained where they stand.
      if (tex === undefined || /[-+/(,]|^\d/.test(tex)) continue;
      const uses = found.get(tex) ?? new Map<string, { use: SymbolUse; plates: PlateEntry[] }>();
      found.set(tex, uses);
      const key = `${name} ${unit ?? ''}`;
      const use = uses.get(key) ?? { use: { name, unit, plates: [] }, plates: [] };
      uses.set(key, use);
      if (!use.plates.includes(plate)) use.plates.push(plate);
    }
  }
  return [...found]
    .map(([tex, uses]) => ({
      id: symbolId(tex),
      tex,
      uses: [...uses.values()].map(({ use, plates: on }) => ({ ...use, plates: on })),
    }))
    .toSorted((a, b) => order(a.tex).localeCompare(order(b.tex), 'en'));
};
