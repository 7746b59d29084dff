/**
 * Cuts the site's typefaces down to the letters and signs it uses.
 *
 * Run by hand after a change here, then look at the pages: `node src/site/fonts.ts`.
 * The cut files are committed, so that a build needs neither this script nor its
 * WebAssembly, and two builds carry the same bytes.
 */
import { readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import subsetFont from 'subset-font';

/** Every character from `first` to `last`, both included. */
function span(first: number, last: number): string {
  return String.fromCodePoint(...Array.from({ length: last - first + 1 }, (_, i) => first + i));
}

const ascii = span(0x20, 0x7e);
/** No-break and thin spaces, quotes, dashes, primes, fraction slash, arrows and the minus. */
const signs = '\u00a0\u2009\u202f' + '‘’‚“”–—…•′″⁄−↑↓';
const latin = ascii + span(0xa1, 0xff) + signs;

/** What the text faces lack and the maths face supplies: see `--serif` in tokens.css. */
const greek = span(0x391, 0x3a1) + span(0x3a3, 0x3a9) + span(0x3b1, 0x3c9) + 'ϑϕϵ';
const relations = '±∓×÷·≤≥≈≠≡∝∞√∑∫∂∆∈→←⇒⟨⟩⌊⌋‖∣∥∘∗⋅⋯…′″°−∼≲≳µ⅓⅔⅛⅜⅝⅞✓⁰⁴⁵⁶⁷⁸⁹₀₁₂₃₄ℎℓ';
/** A browser draws the letters of `<mi>` with these, though the markup holds plain ones. */
const italics =
  span(0x1d434, 0x1d454) + span(0x1d456, 0x1d467) + span(0x1d6e2, 0x1d71b) + '\u{1d6a4}\u{1d6a5}';
/** Function application and the invisible operators, so that they need no other font. */
const invisible = '\u2061\u2062\u2063\u2064';

const features = ['kern', 'liga', 'ccmp', 'locl', 'mark', 'mkmk', 'lnum', 'tnum', 'onum', 'pnum'];
const numbers = ['frac', 'numr', 'dnom', 'sups', 'subs', 'ordn'];

interface Cut {
  readonly from: string;
  readonly to: string;
  readonly text: string;
  readonly weights?: { readonly min: number; readonly max: number } | number;
  readonly keep?: readonly string[];
}

const cuts: readonly Cut[] = [
  {
    from: '@fontsource-variable/source-serif-4/files/source-serif-4-latin-wght-normal.woff2',
    to: 'serif.woff2',
    text: latin,
    weights: { min: 400, max: 700 },
    keep: [...features, ...numbers],
  },
  {
    from: '@fontsource-variable/source-serif-4/files/source-serif-4-latin-wght-italic.woff2',
    to: 'serif-italic.woff2',
    text: latin,
    weights: 400,
    keep: [...features, 'frac', 'numr', 'dnom'],
  },
  {
    from: '@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2',
    to: 'sans.woff2',
    text: latin,
    weights: { min: 400, max: 700 },
    keep: [...features, ...numbers],
  },
  {
    from: '@fontsource/stix-two-math/files/stix-two-math-latin-400-normal.woff2',
    to: 'maths.woff2',
    text: ascii + greek + relations + italics + invisible,
    keep: ['ccmp', 'kern', 'ssty', 'dtls', 'flac', 'mark', 'mkmk'],
  },
];

const modules = new URL('../../node_modules/', import.meta.url);
const assets = new URL('../assets/fonts/', import.meta.url);

let total = 0;
for (const { from, to, text, weights, keep } of cuts) {
  const original = await readFile(new URL(from, modules));
  const cut = await subsetFont(original, text, {
    targetFormat: 'woff2',
    noHinting: true,
    ...(keep ? { keepFeatures: [...keep] } : {}),
    ...(weights === undefined ? {} : { variationAxes: { wght: weights } }),
  });
  await writeFile(new URL(to, assets), cut);
  total += cut.length;
  console.log(
    `${to.padEnd(20)} ${(original.length / 1000).toFixed(1)} -> ${(cut.length / 1000).toFixed(1)} kB`,
  );
}
console.log(`${'together'.padEnd(20)} ${(total / 1000).toFixed(1)} kB in ${fileURLToPath(assets)}`);
