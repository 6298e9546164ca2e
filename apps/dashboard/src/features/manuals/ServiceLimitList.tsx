import { preservationTitles } from '@hubwright/contracts/manuals/service-limits';
import { EmptyState } from '../../ui/EmptyState.tsx';
import type { RevisionModel } from './manuals.ts';

type Limits = RevisionModel['serviceLimits'];

/** What the revision says of time in storage and of the life of seals. */
export function ServiceLimitList({ limits: { storage, seals } }: { limits: Limits }) {
  if (storage.length === 0 && seals.length === 0)
    return (
      <EmptyState title="This revision says nothing of storage or seals">
        Time in storage then counts toward limits in months.
      </EmptyState>
    );
  return (
    <ul className="lines">
      {storage.map(({ preservation, counts, longestMonths }) => (
        <li key={preservation}>
          <span>
            Storage, {preservationTitles[preservation]}: the time {counts ? 'counts' : 'does not count'} toward limits
            in months
          </span>
          <span className="soft">
            {longestMonths === undefined ? 'no longest time' : `inspected every ${longestMonths} months`}
          </span>
        </li>
      ))}
      {seals.map((seal) => (
        <li key={seal.partNumber}>
          <span>
            Seal <span className="code">{seal.partNumber}</span>: {sealWords(seal)}
          </span>
          <span className="soft">{seal.requirement}</span>
        </li>
      ))}
    </ul>
  );
}

function sealWords({ installedMonths, curedMonths, endOfMonth }: Limits['seals'][number]): string {
  const months = [
    installedMonths === undefined ? '' : `${installedMonths} months installed`,
    curedMonths === undefined ? '' : `${curedMonths} months from cure`,
  ].filter((words) => words !== '');
  return `${months.join(' or ')}${endOfMonth ? ', to the end of the month' : ''}`;
}
