import { DateText } from '../../format/values.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { RevisionRow } from './manuals.ts';

/** Whether someone asked the maker if this is the current revision, and when. */
export function CurrencyMark({ revision }: { revision: RevisionRow | undefined }) {
  if (!revision) return null;
  if (revision.state === 'superseded') return <StateMark state="stop" word="superseded" />;
  if (revision.currencyCheckedOn === null) return <StateMark state="waiting" word="never checked" />;
  return (
    <span className="quantity">
      <StateMark state="passed" word="checked" /> <DateText date={revision.currencyCheckedOn} />
    </span>
  );
}
