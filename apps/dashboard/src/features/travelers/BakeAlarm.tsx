import { useQuery } from '@tanstack/react-query';
import { durationWords } from '../../format/step-words.ts';
import { useNow } from '../../format/values.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { bakesQuery, callingOut, timerOf } from './bakes.ts';

/** On every page of whoever bakes: the bake whose time runs out first, louder as it nears. Nothing while none does. */
export function BakeAlarm() {
  // A missed event of the live stream must not silence it.
  const bakes = useQuery({ ...bakesQuery, refetchInterval: 60_000 }).data?.rows ?? [];
  const now = useNow();
  const loud = callingOut(bakes, now);
  const [first] = loud;
  if (!first) return null;
  const { state, startBy, lateByMinutes } = timerOf(first.bake, now);
  const left = durationWords(Math.max(0, Math.floor((startBy - now) / 60_000)));
  const more = loud.length > 1 ? ` and ${loud.length - 1} more` : '';
  const word =
    state === 'too-late'
      ? `Bake ${durationWords(Math.ceil(lateByMinutes))} too late`
      : `${state === 'urgent' ? 'BAKE NOW: ' : 'Bake within '}${left}`;
  return (
    <span role="status" aria-label="Bakes that must begin">
      <Link href="/bench?sheet=bakes">
        <StateMark state={state === 'soon' ? 'hold' : 'stop'} word={`${word}, ${first.position}${more}`} />
      </Link>
    </span>
  );
}
