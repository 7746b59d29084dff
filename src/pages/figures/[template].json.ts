import type { APIRoute, GetStaticPaths } from 'astro';
import type { Sheet } from '../../drawing/sheet.ts';
import { compute } from '../../formula/compute.ts';
import { SEEDS } from '../../exercises/assignment.ts';
import { valuesOf } from '../../exercises/number-of.ts';
import type { Template } from '../../exercises/template.ts';
import { variantOf, withNames } from '../../exercises/variant.ts';
import { bank, loadFormulas } from '../../site/bank.ts';
import type { Draw } from '../../widgets/parts/calculator.ts';

type Reading = Extract<Template, { kind: 'reading' }>;

const drawings = import.meta.glob<{ readonly draw: Draw }>('../../drawing/*.ts', { eager: true });

/**
 * The drawings an exercise is read from, for every set of numbers it can draw. They are drawn at build, since a page that
 * could draw any of them would carry the drawings of all plates, and every plate would then come in more and smaller parts.
 */
const sheetsOf = async (template: Reading): Promise<Readonly<Record<string, Sheet>>> => {
  const formulas = await loadFormulas([template]);
  const { formula: id, given } = template.figure;
  const draw = drawings[`../../drawing/${id}.ts`]?.draw;
  if (!draw) throw new Error(`${template.id}: there is no drawing of ${id}.`);
  const sheets: Record<string, Sheet> = {};
  for (let seed = 0; seed < SEEDS; seed++) {
    const { drawn } = variantOf(template, formulas, seed);
    const name = Object.values(drawn).join('/');
    if (sheets[name]) continue;
    const formula = formulas(id);
    const values = valuesOf(formula, withNames(given, drawn));
    sheets[name] = draw(values, compute(formula, values), {});
  }
  return sheets;
};

export const getStaticPaths = (async () =>
  (await bank())
    .map(({ template }) => template)
    .filter((template) => template.kind === 'reading' && template.figure.show === 'drawing')
    .map((template) => ({
      params: { template: template.id },
      props: { template },
    }))) satisfies GetStaticPaths;

export const GET: APIRoute<{ template: Reading }> = async ({ props }) =>
  Response.json(await sheetsOf(props.template));
