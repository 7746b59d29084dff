import { csv, MARK, type CsvForm } from '../../tabulate/csv.ts';
import { fileHead } from './lines.ts';
import type { Shown } from './live-table.ts';

const FORMS: Readonly<Record<string, CsvForm>> = {
  comma: { separator: ',', decimal: 'point' },
  semicolon: { separator: ';', decimal: 'comma' },
};

/** The table as a file's text. */
export const fileOf = ({ state, request, lines }: Shown, form: CsvForm): string =>
  MARK + csv([fileHead(request, state.style), ...lines.map(({ file }) => file)], form);

const save = (text: string, name: string): void => {
  const address = URL.createObjectURL(new Blob([text], { type: 'text/csv;charset=utf-8' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // Some browsers fetch it a moment later.
  setTimeout(() => {
    URL.revokeObjectURL(address);
  }, 10_000);
};

/**
 * The table leaves the page: as a link, on paper, as a file.
 * @returns what to say of it
 */
export const takeAway = async (act: string, shown: Shown, address: string): Promise<string> => {
  const form = FORMS[act];
  if (form) {
    save(fileOf(shown, form), `${shown.state.formula.id}${act === 'semicolon' ? '-semicolon' : ''}.csv`); // prettier-ignore
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
