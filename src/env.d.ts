/// <reference types="astro/client" />

/** The parts of subset-font this project uses; the package brings no types. */
declare module 'subset-font' {
  interface Options {
    readonly targetFormat: 'woff2';
    readonly noHinting?: boolean;
    readonly keepFeatures?: string[];
    readonly variationAxes?: Record<
      string,
      number | { readonly min: number; readonly max: number }
    >;
  }
  export default function subsetFont(
    original: Uint8Array,
    text: string,
    options: Options,
  ): Promise<Uint8Array>;
}
