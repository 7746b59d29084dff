import { csv, MARK, type CsvForm } from '../../tabulate/csv.ts';
import { download } from '../parts/download.ts';
import { fileHead } from './lines.ts';
import type { Shown } from './live-table.ts';

const FORMS: Readonly<Record<string, CsvForm>> = {
  comma: { separator: ',', decimal: 'point' },
  semicolon: { separator: ';', decimal: 'comma' },
};

/** The table as a file's text. */
export const fileOf = ({ state, request, lines }: Shown, form: CsvForm): string =>
  MARK + csv([fileHead(request, state.style), ...lines.map(({ file }) => file)], form);

/**
 * The table leaves the page: as a link, on paper, as a file.
 * @returns what to say of it
 */
export const takeAway = async (act: string, shown: Shown, address: string): Promise<string> => {
  const form = FORMS[act];
  if (form) {
    const name = `${shown.state.formula.id}${act === 'semicolon' ? '-semicolon' : ''}.csv`;
    download(name, fileOf(shown, form), 'text/csv;charset=utf-8');
    const [have, whole] = [shown.lines.length, shown.request.spec.down.length];
    const much = have < whole ? `${have} of ${whole} lines` : `${whole} lines`;
    return `Saved: ${much}, ${act === 'comma' ? 'commas between cells and decimal points' : 'semicolons between cells and decimal commas'}.`; // prettier-ignore
  }
  if (act === 'print') {
    window.print();
    return '';
  }
  try {
    await navigator.clipboard.writeText(address);
    return 'Link copied.';
  } catch {
    return `Copy this address: ${address}`;
  }
};
