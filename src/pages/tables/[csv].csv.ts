import type { APIRoute } from 'astro';
import { csvRows, type QuickTable } from '../../site/quick-table.ts';
import { quickTables } from '../../site/quick-tables.ts';
import { csv, MARK, type CsvForm } from '../../tabulate/csv.ts';

interface Props {
  readonly table: QuickTable;
  readonly form: CsvForm;
}

export const getStaticPaths = async () =>
  (await quickTables()).flatMap(({ table }) => [
    { params: { csv: table.id }, props: { table, form: { separator: ',', decimal: 'point' } } },
    {
      params: { csv: `${table.id}-semicolon` },
      props: { table, form: { separator: ';', decimal: 'comma' } },
    },
  ]);

export const GET: APIRoute<Props> = ({ props: { table, form } }) =>
  new Response(MARK + csv(csvRows(table), form), {
    headers: { 'Content-Type': 'text/csv; charset=utf-8' },
  });
