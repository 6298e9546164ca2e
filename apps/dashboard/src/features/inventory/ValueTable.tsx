import type { valueOperations } from '@hubwright/contracts/inventory/value-operations';
import type { ReactNode } from 'react';
import type { RowOf } from '../../api/pages.ts';
import { moneyText } from '../../format/money.ts';
import { formatWhole } from '../../format/numbers.ts';
import { Amount, DateText, Price } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { type State, StateMark } from '../../ui/StateMark.tsx';
import { behind } from './behind.ts';

export type Valued = RowOf<typeof valueOperations.stockValue>;

const marks: Record<Valued['idle'], State> = { moving: 'have', slow: 'waiting', dead: 'stop' };

/** An amount that leads to the movements behind it; exported in the currency’s main unit. */
function money(
  column: { id: string; header: string; minor: (row: Valued) => number | null; href: (row: Valued) => string },
  currency: string,
): Column<Valued> {
  const { id, header, minor, href } = column;
  const value = (row: Valued) => {
    const amount = minor(row);
    return amount === null ? null : Number(moneyText({ currency, minor: amount }).replaceAll(',', ''));
  };
  const cell = (row: Valued) => {
    const amount = minor(row);
    return (
      <Link href={href(row)}>{amount === null ? 'not followed' : <Amount minor={amount} currency={currency} />}</Link>
    );
  };
  return { id, header, value, cell, isNumber: true };
}

const partColumn: Column<Valued> = {
  id: 'part',
  header: 'Part',
  value: (row) => `${row.part.number} ${row.part.description}`,
  cell: (row) => (
    <>
      <Link href={`/parts/${row.part.id}`}>{row.part.number}</Link> <span className="soft">{row.part.description}</span>
    </>
  ),
};

const idleColumns: readonly Column<Valued>[] = [
  {
    id: 'idle',
    header: 'Moves',
    value: (row) => row.idle,
    cell: (row) => <StateMark state={marks[row.idle]} word={row.idle} />,
  },
  {
    id: 'lastIssuedOn',
    header: 'Last issue',
    value: (row) => row.lastIssuedOn,
    cell: (row) => (row.lastIssuedOn ? <DateText date={row.lastIssuedOn} /> : <span className="soft">never</span>),
  },
];

function columnsFor(currency: string, since: string): readonly Column<Valued>[] {
  const all = (row: Valued) => behind({ part: row.part.number, partId: row.part.id });
  const issues = (row: Valued) => behind({ part: row.part.number, partId: row.part.id, flow: 'issues', since });
  const counts = (row: Valued) => behind({ part: row.part.number, partId: row.part.id, flow: 'counts', since });
  return [
    partColumn,
    {
      id: 'onHand',
      header: 'On hand',
      value: (row) => row.onHand,
      cell: (row) => <Link href={all(row)}>{formatWhole(row.onHand)}</Link>,
      isNumber: true,
    },
    money({ id: 'byAverage', header: 'By average', minor: (row) => row.byAverageMinor, href: all }, currency),
    {
      id: 'average',
      header: 'Each',
      value: (row) => row.average,
      cell: (row) =>
        row.average === null ? null : (
          <Link href={`/parts/${row.part.id}/average`}>
            <Price each={row.average} currency={currency} />
          </Link>
        ),
      isNumber: true,
    },
    money({ id: 'byLot', header: 'By lot', minor: (row) => row.byLotMinor, href: all }, currency),
    ...idleColumns,
    money({ id: 'used', header: 'Used', minor: (row) => row.usedMinor, href: issues }, currency),
    {
      id: 'turns',
      header: 'Turns',
      value: (row) => (row.turns === null ? null : Number(row.turns)),
      cell: (row) => (row.turns === null ? null : <Link href={issues(row)}>{row.turns}</Link>),
      isNumber: true,
    },
    money({ id: 'shrinkage', header: 'Missed', minor: (row) => row.shrinkageMinor, href: counts }, currency),
  ];
}

/** What each part is worth, and how it moves; every amount leads to its movements. */
export function ValueTable(props: { rows: readonly Valued[]; currency: string; since: string; tools: ReactNode }) {
  return (
    <DataTable
      caption="Stock value"
      rows={props.rows}
      columns={columnsFor(props.currency, props.since)}
      rowKey={(row) => row.part.id}
      tools={props.tools}
      empty={<EmptyState title="No such stock">Search for another part, or show every part.</EmptyState>}
    />
  );
}
