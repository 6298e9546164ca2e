import { scopeTitles } from '@hubwright/contracts/manuals/words';
import { stageTitles } from '@hubwright/contracts/work-orders/states';
import { DateText, Hours } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Returning } from './arrival-draft.ts';

/** A serial the shop knows: earlier visits and last hours, and its parts to take over instead of typing them again. */
export function ReturningUnit({ record, onTakeOver }: { record: Returning; onTakeOver: () => void }) {
  return (
    <div className="stack tight">
      <p>
        <StateMark state="note" word="has been here" />{' '}
        <Link href={`/units/${record.itemId}`}>
          {record.maker} {record.partNumber} {record.serial}
        </Link>
        {record.lastTimes ? (
          <>
            , on <DateText date={record.lastTimes.recordedOn} /> <Hours tenths={record.lastTimes.sinceNewTenths} />{' '}
            since new
          </>
        ) : null}
      </p>
      {record.openWorkOrder ? (
        <p>
          <StateMark state="stop" word="is in the shop now" />{' '}
          <Link href={`/work-orders/${record.openWorkOrder.id}`}>{record.openWorkOrder.number}</Link>,{' '}
          {stageTitles[record.openWorkOrder.stage].toLowerCase()}
        </p>
      ) : null}
      <ul className="small">
        {record.visits.slice(0, 4).map((visit) => (
          <li key={visit.id}>
            <DateText date={visit.receivedOn} /> <Link href={`/work-orders/${visit.id}`}>{visit.number}</Link>{' '}
            {scopeTitles[visit.scope]}, {visit.customer}: {visit.reason}
          </li>
        ))}
      </ul>
      {record.parts.length > 0 && !record.openWorkOrder ? (
        <Button onPress={onTakeOver}>Take over its part numbers and serials</Button>
      ) : null}
    </div>
  );
}
