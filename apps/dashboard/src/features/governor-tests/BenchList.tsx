import { useSuspenseQuery } from '@tanstack/react-query';
import { DueText } from '../../format/values.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { benchesQuery } from './governor.ts';
import { LinkBench } from './link-bench.tsx';

/** The governor benches, until when each is good, and where it sends readings from. */
export function BenchList() {
  const { rows } = useSuspenseQuery(benchesQuery).data;
  if (rows.length === 0)
    return (
      <EmptyState title="No governor bench is on record">Add it under Instruments, with its calibration.</EmptyState>
    );
  return (
    <ul className="lines">
      {rows.map(({ id, tag, title, calibrationDueOn }) => (
        <li key={id}>
          <span className="stack tight">
            <span>
              <strong className="code">{tag}</strong> {title}, good until <DueText date={calibrationDueOn} />
            </span>
            <LinkBench instrumentId={id} tag={tag} />
          </span>
        </li>
      ))}
    </ul>
  );
}
