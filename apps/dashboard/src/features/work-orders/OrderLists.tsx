import { countOf } from '../../format/numbers.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { holderWords } from './order-words.ts';
import type { WorkOrder } from './work-orders.ts';

/** What keeps the unit from leaving, by name, and who clears it. */
export function OpenItems({ order }: { order: WorkOrder }) {
  if (order.openItems.length === 0) return <StateMark state="passed" word="nothing is open" />;
  return (
    <ul className="lines">
      {order.openItems.map((item) => (
        <li key={`${item.holder} ${item.what}`}>
          <span>{item.what}</span>
          <span className="small soft">{holderWords(item.holder)}</span>
        </li>
      ))}
    </ul>
  );
}

/** Box, bracket, spinner, nuts: what came beside the unit, and whether it went back. */
export function LooseItemList({ order }: { order: WorkOrder }) {
  if (order.looseItems.length === 0) return <p className="soft">Nothing came beside it.</p>;
  return (
    <ul className="lines">
      {order.looseItems.map((item) => (
        <li key={item.id}>
          <span>
            {item.quantity} × {item.description}
          </span>
          <StateMark state={item.returnedAt ? 'passed' : 'open'} word={item.returnedAt ? 'packed' : 'still here'} />
        </li>
      ))}
    </ul>
  );
}

/** Each part's traveler with how far it is signed. */
export function TravelerBriefs({ order }: { order: WorkOrder }) {
  if (order.travelers.length === 0)
    return <EmptyState title="No traveler yet">Travelers are written when teardown begins.</EmptyState>;
  return (
    <ul className="lines">
      {order.travelers.map((traveler) => (
        <li key={traveler.id}>
          <div>
            <Link href={`/travelers/${traveler.id}`}>{traveler.number}</Link> {traveler.title}
            <p className="small soft">
              {traveler.nextStep ? `Next: ${traveler.nextStep}` : 'Every step is signed'}
              {traveler.disposition ? `; ${traveler.disposition}` : ''}
            </p>
          </div>
          <span className="quantity">
            {traveler.signed} of {countOf(traveler.steps, 'step')} signed
          </span>
        </li>
      ))}
    </ul>
  );
}

/** What was found, and what was decided about it. */
export function FindingBriefs({ order }: { order: WorkOrder }) {
  if (order.findings.length === 0) return <p className="soft">Nothing was found so far.</p>;
  return (
    <ul className="lines">
      {order.findings.map((finding) => (
        <li key={finding.id}>
          <div>
            <Link href={`/findings?show=all&open=${finding.id}`}>{finding.number}</Link> {finding.place}:{' '}
            {finding.description}
          </div>
          <span className="small">
            {finding.disposition ?? 'not decided'}
            {finding.overAndAbove ? ', over and above' : ''}
          </span>
        </li>
      ))}
    </ul>
  );
}
