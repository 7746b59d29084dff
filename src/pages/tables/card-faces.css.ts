import type { APIRoute } from 'astro';
import { cardTables, FACES, FORMATS } from '../../site/card.ts';

/**
 * Which table stands on which face, by the choices on the page: rules for every table and face, since the choice is made
 * without script. Inside the fold the sheet stands on its head.
 */
export const GET: APIRoute = async () => {
  const tables = (await cardTables()).map(({ table }) => table.id);
  const faces = FACES.flatMap(({ id: face }) =>
    tables.map(
      (table) =>
        `.card-page:has(#${face}-${table}:checked) #face-${table}{display:block;grid-area:${face}}` +
        (face === 'back'
          ? ''
          : `@media print{.card-page:has(#${face}-${table}:checked) #face-${table}{rotate:180deg}}`),
    ),
  );
  const formats = FORMATS.map(
    (format, at) =>
      `.card-page:has(#format-${at}:checked) .card-panel[data-format]:not([data-format="all"],[data-format="${format}"]){display:none}`,
  );
  const systems = ['metric', 'imperial'].map(
    (system) =>
      `.card-page:has(#units-${system}:checked) .card-panel[data-system]:not([data-system="both"],[data-system="${system}"]){display:none}`,
  );
  return new Response(
    ['.card-face.of-table{display:none}', ...faces, ...formats, ...systems].join('\n'),
    {
      headers: { 'content-type': 'text/css' },
    },
  );
};
