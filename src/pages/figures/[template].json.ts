import type { APIRoute, GetStaticPaths } from 'astro';
import type { Style } from '../../formula/notation/write.ts';
import { bank, loadFormulas } from '../../site/bank.ts';
import { picturesOf, type Reading } from '../../site/figures.ts';

/*
 * Drawings to read from are made at build, since a page that could draw any of them would carry the drawings of all
 * plates, and every plate would then come in more and smaller parts. One file an exercise and system of units.
 */
const systems: readonly (readonly [suffix: string, style: Style])[] = [
  ['', {}],
  ['-imperial', { system: 'imperial' }],
];

export const getStaticPaths = (async () =>
  (await bank())
    .map(({ template }) => template)
    .filter(
      (template): template is Reading =>
        template.kind === 'reading' && template.figure.show === 'drawing',
    )
    .flatMap((template) =>
      systems.map(([suffix, style]) => ({
        params: { template: template.id + suffix },
        props: { template, style },
      })),
    )) satisfies GetStaticPaths;

export const GET: APIRoute<{ template: Reading; style: Style }> = async ({
  props: { template, style },
}) => Response.json(picturesOf(template, await loadFormulas([template]), style));
