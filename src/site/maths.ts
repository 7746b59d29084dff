import katex from 'katex';

export interface MathsOptions {
  /** On a line of its own, with full-size fractions. */
  readonly display?: boolean;
  /** The formula in words, for those who listen. */
  readonly spoken?: string | undefined;
}

/**
 * Typesets TeX as MathML at build time: no script, no style, selectable, and it scales with the text.
 *
 * Throws: Error naming the TeX and what KaTeX has against it; warnings count as errors.
 *
 * @example maths(String.raw`\frac{d}{2f}`) // '<math><mrow><mfrac>…'
 */
export const maths = (tex: string, { display = false, spoken }: MathsOptions = {}): string => {
  const markup = typeset(tex, display);
  const body = /<semantics>([\s\S]*)<annotation encoding="application\/x-tex">/.exec(markup)?.[1];
  if (body === undefined) throw new Error(`KaTeX gave no MathML for ${tex}`);
  const attributes =
    (display ? ' display="block" tabindex="0"' : '') +
    (spoken ? ` aria-label="${escapeAttribute(spoken)}"` : '');
  return `<math${attributes}>${spaced(body)}</math>`;
};

/**
 * A thin space around the names of functions (cos τ, 2 arctan x), which MathML leaves to the font and
 * browsers leave out.
 */
const spaced = (body: string): string =>
  body
    .replace(/(<\/(?:mi|mn|mfrac|msub|msup|mrow)>)(?=<mi>[a-z]{2,}<\/mi><mo>\u2061)/g, `$1${THIN}`)
    .replace(
      /(<mo>\u2061<\/mo>(?:<\/mrow><mn>\d+<\/mn><\/msub>)?)(?!<\/mrow>|<mtext>[^@]|<mo stretchy="false">\(|<mrow><mo fence)/g,
      `$1${THIN}`,
    );

const THIN = '<mspace width="0.1667em"></mspace>';

/** One number of the worked line: its key, and the text it shows at first. */
export type WorkedTexts = Readonly<Record<string, string>>;

/**
 * The formula with numbers in it: each `\val{key}` becomes `<mn data-val="key">text</mn>`, which an
 * island finds and rewrites by its text content.
 *
 * Throws: Error when the TeX marks a value that was not given, or is given one it does not mark.
 */
export const workedMaths = (tex: string, texts: WorkedTexts, spoken?: string): string => {
  const unused = new Set(Object.keys(texts));
  const marked = tex.replace(/\\val\{([^{}]+)\}/g, (_all, key: string) => {
    if (texts[key] === undefined) {
      throw new Error(`\\val{${key}} has no value in the worked line ${tex}`);
    }
    unused.delete(key);
    return `\\text{@${key}@}`;
  });
  if (unused.size > 0) {
    throw new Error(`The worked line ${tex} shows no \\val{${[...unused].join('}, \\val{')}}`);
  }
  const markup = maths(marked, { display: true, spoken });
  return markup.replace(
    /<mtext>@([^@<]+)@<\/mtext>/g,
    (_all, key: string) =>
      `<mn data-val="${escapeAttribute(key)}">${escapeText(texts[key] ?? '')}</mn>`,
  );
};

const typeset = (tex: string, displayMode: boolean): string => {
  try {
    return katex.renderToString(tex, {
      displayMode,
      output: 'mathml',
      throwOnError: true,
      strict: 'error',
    });
  } catch (cause) {
    throw new Error(
      `Broken TeX: ${tex}\n${cause instanceof Error ? cause.message : String(cause)}`,
      {
        cause,
      },
    );
  }
};

const escapeText = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
const escapeAttribute = (text: string): string => escapeText(text).replaceAll('"', '&quot;');
