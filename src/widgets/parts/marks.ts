import type { Mark } from '../../drawing/sheet.ts';

/** What a mark's element is called and carries: the page's own picture and the script's are set from this alone. */
export const elementOf = (
  mark: Mark,
): { readonly name: 'path' | 'text'; readonly attributes: Record<string, string> } => {
  if (mark.kind === 'path')
    return {
      name: 'path',
      attributes: { class: `d-${mark.role}${mark.filled ? ' d-filled' : ''}`, d: mark.d },
    };
  const { x, y, anchor = 'start', role, turn } = mark;
  const soft = role === 'construction' || role === 'dimension' || role === 'hidden';
  const classes = [
    'd-text',
    anchor !== 'start' && `d-text-${anchor}`,
    soft && 'd-text-soft',
    role === 'emphasis' && 'd-text-emphasis',
  ];
  return {
    name: 'text',
    attributes: {
      class: classes.filter(Boolean).join(' '),
      x: String(x),
      y: String(y),
      ...(turn !== undefined && turn !== 0 && { transform: `rotate(${turn} ${x} ${y})` }),
    },
  };
};
