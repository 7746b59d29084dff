import type { Mark } from '../../drawing/sheet.ts';

/**
 * A mark as an SVG element. The page’s own picture and the script’s are set from this alone. The plates’ own (in parts)
 * comes with all that numbers need, which a timetable does not.
 */
export const inkOf = (
  mark: Mark,
): {
  readonly name: 'path' | 'text';
  readonly text: string;
  readonly attributes: Record<string, string>;
} => {
  if (mark.kind === 'path')
    return {
      name: 'path',
      text: '',
      attributes: { class: `d-${mark.role}${mark.filled ? ' d-filled' : ''}`, d: mark.d },
    };
  const { x, y, anchor = 'start', role, text } = mark;
  const classes = [
    'd-text',
    anchor !== 'start' && `d-text-${anchor}`,
    role === 'dimension' && 'd-text-soft',
    role === 'emphasis' && 'd-text-emphasis',
  ];
  return {
    name: 'text',
    text,
    attributes: { class: classes.filter(Boolean).join(' '), x: String(x), y: String(y) },
  };
};
