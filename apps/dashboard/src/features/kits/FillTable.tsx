import type { ReactNode } from 'react';
import { countOf } from '../../format/numbers.ts';
import { plainDates } from '../../format/plain-dates.ts';
import { Amount, DueText } from '../../format/values.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import type { KitLeftOut, KitToFill } from './kits-to-fill.ts';

function KitName({ row }: { row: KitToFill | KitLeftOut }) {
  return (
    <>
      <Link href={`/kits/${row.kitId}`}>{row.code}</Link>
      <p className="small soft">
        {row.workOrder.number}, {row.workOrder.unit} for {row.workOrder.customer}
      </p>
    </>
  );
}

const needed: Column<KitToFill | KitLeftOut> = {
  id: 'needed',
  header: 'Needed by',
  value: (row) => row.needBy,
  cell: (row) => <DueText date={row.needBy} />,
};

const worth: readonly Column<KitToFill>[] = [
  {
    id: 'amount',
    header: 'Promised value',
    value: (row) => (row.amount ? row.amount.minor / 100 : null),
    isNumber: true,
    cell: (row) => (row.amount ? <Amount {...row.amount} /> : <span className="soft">no price yet</span>),
  },
  { id: 'days', header: 'Days late avoided', value: (row) => row.daysAvoided, isNumber: true },
  {
    id: 'why',
    header: 'Why',
    value: (row) => row.why,
    canSort: false,
    cell: (row) => (
      <div className="small">
        <p>{plainDates(row.why)}</p>
        <Picks row={row} />
      </div>
    ),
  },
];

function Picks({ row }: { row: KitToFill }) {
  return (
    <details>
      <summary className="soft">{countOf(row.picks.length, 'lot')} to promise</summary>
      <ul className="stack tight">
        {row.picks.map(({ lineId, lotId, lotCode, quantity, part, position, standIn, bin }) => (
          <li key={lineId + lotId}>
            {quantity} × <span className="code">{part.number}</span> for {position}: {lotCode} in {bin}
            {standIn ? `, ${standIn} stands in` : ''}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** Kits that can be filled from the shelf now, those that avoid most on top. */
export function FillTable({
  rows,
  chosen,
  onChoose,
  tools,
}: {
  rows: readonly KitToFill[];
  chosen: ReadonlySet<string>;
  /** Absent for those who may not accept. */
  onChoose?: ((kitId: string, isChosen: boolean) => void) | undefined;
  tools?: ReactNode;
}) {
  const kit: Column<KitToFill> = {
    id: 'kit',
    header: 'Kit',
    value: (row) => row.code,
    cell: (row) => (
      <div className="row tight">
        {onChoose ? (
          <Checkbox isSelected={chosen.has(row.kitId)} onChange={(is) => onChoose(row.kitId, is)}>
            <span className="only-heard">Fill {row.code}</span>
          </Checkbox>
        ) : null}
        <div>
          <KitName row={row} />
        </div>
      </div>
    ),
  };
  return (
    <DataTable
      caption="Kits that can be filled now"
      rows={rows}
      columns={[kit, needed, ...worth]}
      rowKey={(row) => row.kitId}
      tools={tools}
      empty={
        <EmptyState title="No open kit can be completed from what is free on the shelf">
          Look below at what each lacks, and at the shortages for what to order.
        </EmptyState>
      }
    />
  );
}

const leftOut: readonly Column<KitLeftOut>[] = [
  { id: 'kit', header: 'Kit', value: (row) => row.code, cell: (row) => <KitName row={row} /> },
  needed,
  {
    id: 'lacks',
    header: 'What it lacks',
    value: (row) => row.cause,
    canSort: false,
    cell: (row) => (
      <div className="small">
        <p>{row.cause}</p>
        <details>
          <summary className="soft">{countOf(row.lacks.length, 'line')}, each with its cause</summary>
          {row.lacks.map(({ lineId, cause }) => (
            <p key={lineId}>{plainDates(cause)}</p>
          ))}
        </details>
      </div>
    ),
  },
];

/** Kits that are not proposed: each with what it lacks, or with those that take what it needs. */
export function LeftOutTable({ rows }: { rows: readonly KitLeftOut[] }) {
  return (
    <DataTable
      caption="Kits left out"
      rows={rows}
      columns={leftOut}
      rowKey={(row) => row.kitId}
      empty={<EmptyState title="No open kit is left out" />}
    />
  );
}
