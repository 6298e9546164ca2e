import type { ReactNode } from 'react';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { type State, StateMark } from '../../ui/StateMark.tsx';
import styles from './imports.module.css';
import { type Preview, type PreviewRow, titleOf, type Verdict } from './preview.ts';

const marks: Record<Verdict, State> = { new: 'have', changed: 'note', same: 'open', wrong: 'stop' };

/** With more columns than these a fault may stand out of sight: it is said in front of the row, and its cell is only marked. */
const mostInSight = 8;

/** What is wrong with one cell stands in it. */
function Cell({ row, column, isWide }: { row: PreviewRow; column: number; isWide: boolean }) {
  const faults = row.errors.filter((error) => error.column === column);
  if (isWide && faults.length > 0) return <StateMark state="stop" word={row.cells[column] || 'empty'} />;
  return (
    <>
      {row.cells[column] || <span className="soft">empty</span>}
      {faults.map(({ detail }) => (
        <span key={detail} className={styles.fault}>
          {detail}
        </span>
      ))}
    </>
  );
}

function Row({ row, preview, isWide }: { row: PreviewRow; preview: Preview; isWide: boolean }) {
  const elsewhere = row.errors.filter(({ column }) => isWide || column === null);
  return (
    <>
      <StateMark state={marks[row.verdict]} word={row.verdict} />
      {row.changes.map(({ field, from, to }) => (
        <span key={field + from} className={styles.change}>
          {titleOf(preview.kind, field)}: {from || 'nothing'} → {to || 'nothing'}
        </span>
      ))}
      {elsewhere.map(({ field, detail }) => (
        <span key={field + detail} className={styles.fault}>
          {titleOf(preview.kind, field)}: {detail}
        </span>
      ))}
    </>
  );
}

function whatItSays({ verdict, errors, changes }: PreviewRow): string {
  const said = [
    ...errors.map(({ field, detail }) => `${field}: ${detail}`),
    ...changes.map(({ field, from, to }) => `${field}: ${from} → ${to}`),
  ];
  return [verdict, ...said].join('; ');
}

/** Each row of the file with what it would do, and each fault at its cell. */
export function PreviewTable(props: { preview: Preview; rows: readonly PreviewRow[]; tools: ReactNode }) {
  const { preview, rows, tools } = props;
  const read = Object.entries(preview.mapping).toSorted(([, a], [, b]) => a - b);
  const isWide = read.length > mostInSight;
  const columns: Column<PreviewRow>[] = [
    { id: 'line', header: 'Line', value: (row) => row.line, isNumber: true },
    {
      id: 'what',
      header: 'What it does',
      value: whatItSays,
      cell: (row) => <Row row={row} preview={preview} isWide={isWide} />,
    },
    ...read.map(([field, column]) => ({
      id: field,
      header: titleOf(preview.kind, field),
      value: (row: PreviewRow) => row.cells[column] ?? '',
      cell: (row: PreviewRow) => <Cell row={row} column={column} isWide={isWide} />,
    })),
  ];
  return (
    <DataTable
      caption="Rows of the table"
      rows={rows}
      columns={columns}
      rowKey={(row) => String(row.line)}
      tools={tools}
      empty={<EmptyState title="No such row">Choose other rows above.</EmptyState>}
    />
  );
}
