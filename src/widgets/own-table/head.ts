import { spelt } from '../../formula/notation/spelt.ts';
import type { Output } from '../../formula/record.ts';
import type { Style } from '../../formula/notation/write.ts';
import type { Request } from './own-state.ts';
import { el, type Branch } from './tree.ts';
import { capital, sayStep, titleOf } from './words.ts';

/**
 * All of a table that stands before its first line: caption, columns and headings. Several results of each step across
 * have their own columns under the step's.
 */
export const headOf = (request: Request, style: Style): readonly Branch[] => {
  const { spec, show, down, across } = request;
  const { formula } = spec;
  const downInput = formula.inputs[down];
  const corner = downInput ? capital(spelt(downInput)) : '';
  const steps = across ? spec.across.map((step) => sayStep(formula, across, step, style)) : [];
  const outputs = show.map((key) => capital(spelt(formula.outputs[key] as Output)));
  const both = steps.length > 0 && show.length > 1;
  const lines = steps.length === 0 ? outputs : both ? steps.flatMap(() => outputs) : steps;
  const columns = lines.map((text) => el('th', { scope: 'col' }, text));
  const first = el('th', { scope: 'col', rowspan: both ? '2' : undefined }, corner);
  return [
    el('caption', { id: 'own-caption' }, el('span', {}, titleOf(request))),
    el(
      'colgroup',
      {},
      el('col'),
      lines.map(() => el('col')),
    ),
    el(
      'thead',
      {},
      both
        ? [
            el(
              'tr',
              {},
              first,
              steps.map((text) => el('th', { scope: 'colgroup', colspan: String(show.length) }, text)), // prettier-ignore
            ),
            el('tr', {}, columns),
          ]
        : el('tr', {}, first, columns),
    ),
  ];
};
