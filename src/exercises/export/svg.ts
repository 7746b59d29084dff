import type { Drawing } from './figure.ts';
import { escape } from './html.ts';

/** A drawing to scale as marks, as src/drawing makes it. */
export interface Marks {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly (
    | {
        readonly kind: 'path';
        readonly d: string;
        readonly role: string;
        readonly filled?: boolean;
      }
    | {
        readonly kind: 'text';
        readonly x: number;
        readonly y: number;
        readonly text: string;
        readonly anchor?: 'start' | 'middle' | 'end';
        readonly role?: string;
        readonly turn?: number;
      }
  )[];
}

// The weights of the site’s drawings, in colours for white paper: away from the site there is no sheet of styles.
const STYLE = [
  'svg{background:#fff}',
  'path{fill:none;stroke:#1d2026;stroke-width:1.25;stroke-linejoin:round}',
  '.object,.hidden{stroke-linecap:round}.object{stroke-width:1.75}.hidden{stroke-dasharray:4 4}',
  '.object.filled,.ground.filled{fill:#f6f2ea}.ground.filled{stroke:none}',
  '.figure{fill:#4a4f58;stroke:none}',
  '.light{stroke:#a45a00}.light.filled{fill:#fdf0d8}',
  '.shade{stroke:#2a6587}.shade.filled{fill:#e3eef4}',
  '.construction,.dimension{stroke:#4a4f58;stroke-width:.75}.construction{stroke-dasharray:6 3}',
  '.ground{stroke:#b9b4a8;stroke-width:1}',
  '.emphasis{stroke:#a45a00;stroke-width:2.5}',
  'text{fill:#1d2026;stroke:#fff;stroke-width:3;stroke-linejoin:round;paint-order:stroke;font:13px sans-serif}',
  'text.construction,text.dimension,text.hidden{fill:#4a4f58;stroke:#fff;stroke-width:3}',
  'text.emphasis{fill:#6f3c00;stroke:#fff;stroke-width:3;font-weight:600}',
].join('');

/** A drawing as a file of its own, with its words as title. */
export const svgOf = ({ width, height, marks }: Marks, says: string): Drawing => {
  const lines = marks.map((mark) => {
    if (mark.kind === 'path')
      return `<path class="${escape(mark.role)}${mark.filled ? ' filled' : ''}" d="${escape(mark.d)}"/>`;
    const { x, y, anchor, role, turn, text } = mark;
    const more = [
      role && ` class="${escape(role)}"`,
      anchor && anchor !== 'start' && ` text-anchor="${anchor}"`,
      turn && ` transform="rotate(${turn} ${x} ${y})"`,
    ].filter(Boolean);
    return `<text x="${x}" y="${y}"${more.join('')}>${escape(text)}</text>`;
  });
  return {
    svg: `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img"><title>${escape(says)}</title><style>${STYLE}</style>${lines.join('')}</svg>`,
    says,
    width,
    height,
  };
};
