import type { fieldReviewOperations } from '@hubwright/contracts/field-balance/review-operations';
import type { Reply } from '@hubwright/contracts/operation';
import { DateText, InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { sensorAfterSensor } from './field-balance.ts';

export type FieldReview = Reply<typeof fieldReviewOperations.listFieldReviews>['rows'][number];

export const reviewWords = {
  stands: 'the readings stand',
  'measure-again': 'to be read again under a new sheet',
  'customer-told': 'the customer was told',
} as const;

export function readingWords({ readings, unit }: FieldReview): string {
  return readings
    ? sensorAfterSensor({ readings })
        .map(({ rpm, amplitude, phase }) => `${amplitude} ${unit} at ${phase}°, ${rpm} rpm`)
        .join('; ')
    : 'nothing was read yet';
}

const signedWords = { 'set-up': 'Sheet before any run', balanced: 'Balance' } as const;

function Decision({ of, onDecide }: { of: FieldReview; onDecide: ((review: FieldReview) => void) | undefined }) {
  if (of.answered) return <StateMark state="passed" word="nothing rests on it any more" />;
  const isOpen = of.decision === null || of.decision === 'measure-again';
  return (
    <div className="stack tight">
      <span>
        <StateMark
          state={of.decision === null ? 'waiting' : isOpen ? 'hold' : 'passed'}
          word={of.decision === null ? 'nobody decided' : reviewWords[of.decision]}
        />
        {of.decidedBy ? (
          <span className="small soft">
            {' '}
            {of.decidedBy}: {of.reason}
          </span>
        ) : null}
      </span>
      {isOpen && onDecide ? (
        <Button onPress={() => onDecide(of)} aria-label={`Decide on ${of.fieldBalance.number}`}>
          Decide
        </Button>
      ) : null}
    </div>
  );
}

/** Balances on the aircraft that rest on an instrument found out of tolerance since. */
export function FieldReviewTable(props: {
  reviews: readonly FieldReview[];
  onDecide: ((review: FieldReview) => void) | undefined;
}) {
  const columns: Column<FieldReview>[] = [
    { id: 'instrument', header: 'Instrument', value: (row) => row.instrument.tag },
    { id: 'found', header: 'Found out', value: (row) => row.foundOn, cell: (row) => <DateText date={row.foundOn} /> },
    {
      id: 'order',
      header: 'Order',
      value: (row) => row.fieldBalance.number,
      cell: (row) => <Link href={`/on-aircraft/${row.fieldBalance.id}`}>{row.fieldBalance.number}</Link>,
    },
    {
      id: 'propeller',
      header: 'Propeller',
      value: (row) => `${row.propeller.designation} ${row.propeller.serial} on ${row.aircraft}, ${row.customer}`,
    },
    { id: 'state', header: 'Stands at', value: (row) => row.fieldBalance.state },
    {
      id: 'signed',
      header: 'Signed',
      value: (row) => signedWords[row.signed],
      cell: (row) => (
        <>
          {signedWords[row.signed]}
          <br />
          <span className="small soft">
            {row.person}, <InstantText instant={row.signedAt} />
          </span>
        </>
      ),
    },
    { id: 'readings', header: 'Read last', value: readingWords },
    {
      id: 'decision',
      header: 'Decision',
      value: (row) => row.decision ?? undefined,
      cell: (row) => <Decision of={row} onDecide={props.onDecide} />,
    },
  ];
  return (
    <DataTable
      caption="Balances on the aircraft under review"
      rows={props.reviews}
      columns={columns}
      rowKey={(row) => row.id}
      empty={
        <EmptyState title="No balance on the aircraft is in doubt">
          When an analyser comes back out of tolerance, the balances that rest on it are listed here.
        </EmptyState>
      }
    />
  );
}
