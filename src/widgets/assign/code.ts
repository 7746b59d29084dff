import { encode } from 'uqr';
import { make } from '../parts/dom.ts';

const SVG = 'http://www.w3.org/2000/svg';

/**
 * Beyond this version a printed code of 6 cm has modules of less than 0.6 mm, and a code on a projector’s screen fewer
 * than a camera tells apart from the last row. Common practice, no source.
 */
export const LARGEST_VERSION = 20;

/** The light border a reader of codes needs, in modules. */
const BORDER = 4;

/**
 * A link as a QR code with error correction M.
 * @returns undefined where it would be too fine to be read
 */
export const codeOf = (link: string): Element | undefined => {
  const code = encode(link, { ecc: 'M', border: 0 });
  if (code.version > LARGEST_VERSION) return undefined;
  const runs: string[] = [];
  for (const [y, row] of code.data.entries())
    for (let x = 0; x < row.length; x++) {
      if (!row[x]) continue;
      const from = x;
      while (row[x + 1]) x++;
      runs.push(`M${from} ${y}h${x - from + 1}v1H${from}z`);
    }
  const size = code.size + 2 * BORDER;
  const svg = make('svg', '', { class: 'set-code', viewBox: `${-BORDER} ${-BORDER} ${size} ${size}`, role: 'img', 'aria-label': 'The link as a QR code', 'shape-rendering': 'crispEdges' }, SVG); // prettier-ignore
  svg.append(
    make('rect', '', { x: String(-BORDER), y: String(-BORDER), width: String(size), height: String(size), fill: '#fff' }, SVG), // prettier-ignore
    make('path', '', { d: runs.join(''), fill: '#000' }, SVG),
  );
  return svg;
};
