import { escape, line, paragraphs, table } from '../export/html.ts';
import type { Shown } from '../export/figure.ts';
import type { Told } from './told.ts';

/** A marked copy, ready to be written. */
export interface Copy {
  readonly assignment: string;
  readonly alias: string;
  /** “13.5 of 20, 1 still to judge”. */
  readonly total: string;
  readonly questions: readonly { readonly told: Told; readonly figure: Shown | undefined }[];
}

// Of a file that lies in a folder for years: no script, nothing fetched, and the same black on white everywhere.
const STYLE = [
  '@page{margin:18mm 16mm}',
  'body{max-width:42rem;margin:2rem auto;padding:0 1rem;font:1rem/1.5 Georgia,serif;color:#1d2026;background:#fff}',
  'h1{font-size:1.5rem;font-weight:500;line-height:1.2;margin:0}',
  'h2{font-size:1.1rem;line-height:1.2;margin:0 0 .5rem}',
  'header{border-bottom:2px solid;padding-bottom:.5rem}',
  'header p{margin:.25rem 0 0}',
  'section{border-top:1px solid #b9b4a8;margin-top:1.25rem;padding-top:1rem}',
  'header+section{border-top:0;padding-top:0}',
  'section p{margin:.25rem 0}',
  'ol,ul{margin:.4rem 0;padding-inline-start:1.4em}',
  'dl{display:grid;grid-template-columns:minmax(6rem,max-content) 1fr;gap:.15rem 1rem;margin:.6rem 0 0;font:.9rem/1.4 sans-serif}',
  'dt{font-weight:600}',
  'dd{margin:0;overflow-wrap:anywhere}',
  'dt.mark,dd.mark{font-size:1rem}',
  'svg,table{max-width:100%;height:auto;margin:.6rem 0}',
  'table{border-collapse:collapse;font:.85rem/1.35 sans-serif}',
  'caption{text-align:start}',
  'th,td{padding:.15rem .6rem;border-bottom:1px solid #b9b4a8;text-align:end}',
  '@media print{body{margin:0;padding:0;max-width:none;font-size:10.5pt}section{break-inside:avoid}}',
].join('');

/** Nothing in the file may run or fetch, whatever stands in it. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

const figureOf = (figure: Shown | undefined): string =>
  figure === undefined
    ? ''
    : figure.show === 'table'
      ? table(figure.table)
      : // Our own drawing, written by svg.ts, which escapes what stands in it.
        figure.drawing.svg;

const listOf = ({ list: { numbered, texts } }: Told): string => {
  const name = numbered ? 'ol' : 'ul';
  return texts.length === 0
    ? ''
    : `<${name}>${texts.map((text) => `<li>${line(text)}</li>`).join('')}</${name}>`;
};

const questionOf = ({ told, figure }: Copy['questions'][number], at: number): string => {
  const facts = told.facts.map(([name, text]) => {
    const kind = name === 'Mark' ? ' class="mark"' : '';
    return `<dt${kind}>${escape(name)}</dt><dd${kind}>${escape(text)}</dd>`;
  });
  return `<section><h2>${at + 1} ${escape(told.title)}</h2>${paragraphs(told.text)}${listOf(told)}${figureOf(figure)}<dl>${facts.join('')}</dl></section>`;
};

/** A marked copy as a page of its own: plain HTML for any browser and for paper, without script. */
export const pageOf = ({ assignment, alias, total, questions }: Copy): string =>
  [
    '<!doctype html>',
    '<html lang="en"><head><meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${POLICY}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escape(`${assignment}: ${alias}`)}</title><style>${STYLE}</style></head><body>`,
    `<header><h1>${escape(assignment)}</h1><p><b>${escape(alias)}</b>: ${escape(total)}</p></header>`,
    ...questions.map(questionOf),
    '</body></html>',
    '',
  ].join('\n');
