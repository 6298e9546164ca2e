import { flexRender, type Table, type Row as TableRow } from '@tanstack/react-table';
import type { KeyboardEvent, MouseEvent, ReactNode } from 'react';
import { Link, useNavigateTo } from './Link.tsx';

interface Opening<Row> {
  rowHref?: (row: Row) => string;
  onOpen?: (row: Row) => void;
}

/** True when the press was meant for a control inside the row. */
function isOnControl(target: EventTarget): boolean {
  return target instanceof Element && target.closest('a, button, input, label, select, textarea') !== null;
}

/** Arrow keys walk the rows, Home and End jump, Enter opens. */
function moveFocus(event: KeyboardEvent<HTMLTableRowElement>) {
  const rows = [...(event.currentTarget.parentElement?.children ?? [])] as HTMLElement[];
  const at = rows.indexOf(event.currentTarget);
  const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: rows.length - 1 }[event.key];
  if (to === undefined || !rows[to]) return;
  event.preventDefault();
  rows[to].focus();
}

function BodyRow<Row>({ row, rowHref, onOpen }: Opening<Row> & { row: TableRow<Row> }) {
  const navigate = useNavigateTo();
  const href = rowHref?.(row.original);
  const canOpen = href !== undefined || onOpen !== undefined;
  const open = () => (href === undefined ? onOpen?.(row.original) : navigate(href));
  const onKeyDown = (event: KeyboardEvent<HTMLTableRowElement>) => {
    if (event.target !== event.currentTarget) return;
    moveFocus(event);
    if (event.key === 'Enter') open();
  };
  const onClick = (event: MouseEvent) => {
    if (!isOnControl(event.target) && window.getSelection()?.isCollapsed !== false) open();
  };
  return (
    <tr {...(canOpen ? { tabIndex: 0, onKeyDown, onClick, className: 'opens' } : {})}>
      {row.getVisibleCells().map((cell, place) => {
        const content: ReactNode = flexRender(cell.column.columnDef.cell, cell.getContext());
        return (
          <td key={cell.id} className={cell.column.columnDef.meta?.isNumber ? 'number' : ''}>
            {place === 0 && href !== undefined ? (
              <Link href={href} tabIndex={-1}>
                {content}
              </Link>
            ) : (
              content
            )}
          </td>
        );
      })}
    </tr>
  );
}

export function TableBody<Row>({ table, ...opening }: Opening<Row> & { table: Table<Row> }) {
  return (
    <tbody>
      {table.getRowModel().rows.map((row) => (
        <BodyRow key={row.id} row={row} {...opening} />
      ))}
    </tbody>
  );
}
