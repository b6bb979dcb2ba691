/** A list as CSV: the group stands in the first column of every line. */
import { csvOf } from '../../refit/csv.ts';
import type { List } from './types.ts';

export const listCsv = ({ columns, groups }: List): string =>
  csvOf([
    ['Group', ...columns],
    ...groups.flatMap(({ title, rows }) => rows.map(({ cells }) => [title, ...cells])),
  ]);
