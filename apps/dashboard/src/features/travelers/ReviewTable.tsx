import type { Reply } from '@hubwright/contracts/operation';
import type { reviewOperations } from '@hubwright/contracts/work-orders/review-operations';
import type { ReactNode } from 'react';
import { DateText, InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';

export type Review = Reply<typeof reviewOperations.listCalibrationReviews>['rows'][number];

export const decisionWords = {
  stands: 'the reading stands',
  'measure-again': 'to be measured again',
  'customer-told': 'the customer was told',
} as const;

export function valueWords({ values }: Review): string {
  return values
    .map(
      ({ name, value, unit, low, high }) =>
        `${name} ${value} ${unit} (${[low && `from ${low}`, high && `to ${high}`].filter(Boolean).join(' ')})`,
    )
    .join('; ');
}

function Decision({ of, onDecide }: { of: Review; onDecide: ((review: Review) => void) | undefined }) {
  if (of.measuredAgain) return <StateMark state="passed" word="measured again" />;
  const isOpen = of.decision === null || of.decision === 'measure-again';
  return (
    <div className="stack tight">
      <span>
        <StateMark
          state={of.decision === null ? 'waiting' : isOpen ? 'hold' : 'passed'}
          word={of.decision === null ? 'nobody decided' : decisionWords[of.decision]}
        />
        {of.decidedBy ? (
          <span className="small soft">
            {' '}
            {of.decidedBy}: {of.reason}
          </span>
        ) : null}
      </span>
      {isOpen && onDecide ? (
        <Button onPress={() => onDecide(of)} aria-label={`Decide ${of.what} of ${of.workOrder.number}`}>
          Decide
        </Button>
      ) : null}
    </div>
  );
}

/** What was signed with instruments that were then found out of tolerance, each beside its limits and where the unit is. */
export function ReviewTable(props: {
  reviews: readonly Review[];
  onDecide: ((review: Review) => void) | undefined;
  tools: ReactNode;
}) {
  const columns: Column<Review>[] = [
    { id: 'instrument', header: 'Instrument', value: (row) => row.instrument.tag },
    { id: 'found', header: 'Found out', value: (row) => row.foundOn, cell: (row) => <DateText date={row.foundOn} /> },
    { id: 'order', header: 'Work order', value: (row) => row.workOrder.number },
    { id: 'unit', header: 'Unit', value: (row) => `${row.unit.designation} ${row.unit.serial}, ${row.customer}` },
    {
      id: 'where',
      header: 'Where it is',
      value: (row) => (row.workOrder.releasedAt ? 'released' : 'here'),
      cell: (row) =>
        row.workOrder.releasedAt ? <StateMark state="stop" word="released" /> : <StateMark state="open" word="here" />,
    },
    {
      id: 'what',
      header: 'Signed',
      value: (row) => `${row.traveler ? `${row.traveler.position}, ` : ''}${row.what}`,
      cell: (row) => (
        <>
          {row.traveler ? `${row.traveler.position}, ` : ''}
          {row.what}
          <br />
          <span className="small soft">
            {row.person}, <InstantText instant={row.performedAt} />
          </span>
        </>
      ),
    },
    { id: 'values', header: 'Read', value: valueWords },
    {
      id: 'decision',
      header: 'Decision',
      value: (row) => row.decision ?? undefined,
      cell: (row) => <Decision of={row} onDecide={props.onDecide} />,
    },
  ];
  return (
    <DataTable
      caption="Readings under review"
      rows={props.reviews}
      columns={columns}
      rowKey={(row) => row.id}
      tools={props.tools}
      empty={
        <EmptyState title="No reading is in doubt">
          When an instrument comes back out of tolerance, what was signed with it is listed here.
        </EmptyState>
      }
    />
  );
}
