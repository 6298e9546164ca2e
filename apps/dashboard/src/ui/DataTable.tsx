import type { CellValue } from '@hubwright/rules/csv';
import {
  type ColumnDef,
  getCoreRowModel,
  getSortedRowModel,
  type SortingState,
  useReactTable,
} from '@tanstack/react-table';
import { type ReactNode, useMemo, useState } from 'react';
import { countOf, formatWhole } from '../format/numbers.ts';
import { ExportButton } from './ExportButton.tsx';
import { useRest } from './Pages.tsx';
import { TableBody } from './TableBody.tsx';
import { TableHead } from './TableHead.tsx';

export interface Column<Row> {
  readonly id: string;
  readonly header: string;
  /** What is sorted and exported. Numbers sort as numbers, text by natural order (part 9 before part 10). */
  readonly value: (row: Row) => CellValue;
  /** What is shown, when it is more than the value. */
  readonly cell?: (row: Row) => ReactNode;
  readonly isNumber?: boolean;
  readonly canSort?: boolean;
}

export interface DataTableProps<Row> {
  /** Says what the rows are; read aloud and used for the file name. */
  caption: string;
  rows: readonly Row[];
  columns: readonly Column<Row>[];
  rowKey: (row: Row) => string;
  /** Where a row leads. Its first cell becomes the link; Enter on the row and a touch anywhere on it follow it too. */
  rowHref?: (row: Row) => string;
  /** What opening a row does, when it leads nowhere. */
  onOpen?: (row: Row) => void;
  /** What to show when there are no rows: an `EmptyState`. */
  empty: ReactNode;
  sort?: SortingState;
  onSort?: (sort: SortingState) => void;
  /** Above the table, at the left: filters or the one action. */
  tools?: ReactNode;
}

declare module '@tanstack/react-table' {
  interface ColumnMeta<TData, TValue> {
    isNumber: boolean;
  }
}

/** Whole numbers with their thousands apart; everything else as it is. */
function shownAs(value: CellValue): string {
  return typeof value === 'number' && Number.isInteger(value) ? formatWhole(value) : String(value ?? '');
}

function definitionOf<Row>(column: Column<Row>): ColumnDef<Row, CellValue> {
  return {
    id: column.id,
    header: column.header,
    accessorFn: column.value,
    cell: ({ row, getValue }) => (column.cell ? column.cell(row.original) : shownAs(getValue())),
    sortingFn: column.isNumber ? 'basic' : 'alphanumeric',
    sortUndefined: 'last',
    enableSorting: column.canSort ?? true,
    meta: { isNumber: column.isNumber ?? false },
  };
}

/** Rows that sort by their headings, open by key or touch, and leave as CSV: the whole list as it is filtered and sorted. */
export function DataTable<Row>(props: DataTableProps<Row>) {
  const { caption, rows, columns, rowKey } = props;
  const [ownSort, setOwnSort] = useState<SortingState>([]);
  const sorting = props.sort ?? ownSort;
  const definitions = useMemo(() => columns.map(definitionOf), [columns]);
  const table = useReactTable<Row>({
    data: rows as Row[],
    columns: definitions,
    getRowId: rowKey,
    state: { sorting },
    onSortingChange: (change) => {
      const next = typeof change === 'function' ? change(sorting) : change;
      (props.onSort ?? setOwnSort)(next);
    },
    getCoreRowModel: getCoreRowModel(),
    getSortedRowModel: getSortedRowModel(),
  });
  const { more } = useRest();
  return (
    <div className="data-table">
      <div className="row between table-tools">
        <div className="row">{props.tools}</div>
        <div className="row no-print">
          <span className="soft small">
            {more ? 'the first ' : ''}
            {countOf(rows.length, 'row')}
          </span>
          {rows.length > 0 ? (
            <ExportButton
              caption={caption}
              columns={columns}
              rows={table.getRowModel().rows.map((row) => row.original)}
            />
          ) : null}
        </div>
      </div>
      {rows.length === 0 ? (
        props.empty
      ) : (
        <div className="table-frame">
          <table>
            <caption className="only-heard">{caption}</caption>
            <TableHead table={table} />
            <TableBody
              table={table}
              {...(props.rowHref ? { rowHref: props.rowHref } : {})}
              {...(props.onOpen ? { onOpen: props.onOpen } : {})}
            />
          </table>
        </div>
      )}
    </div>
  );
}
