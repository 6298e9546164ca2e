import type { BakeClock } from '@hubwright/contracts/work-orders/bake-shapes';
import { durationWords } from '../../format/step-words.ts';
import { InstantText, useNow } from '../../format/values.tsx';
import { type State, StateMark } from '../../ui/StateMark.tsx';
import { timerOf } from './bakes.ts';

const states = {
  'to-begin': 'waiting',
  soon: 'hold',
  urgent: 'stop',
  'too-late': 'stop',
  'in-oven': 'open',
  'may-come-out': 'passed',
} as const satisfies Record<ReturnType<typeof timerOf>['state'], State>;

/** Until when a bake must begin, louder as that nears; in the oven, from when it may come out. */
export function BakeMark({ clock }: { clock: BakeClock }) {
  const now = useNow();
  const { state, startBy, lateByMinutes, outFrom } = timerOf(clock, now);
  const late = durationWords(Math.ceil(lateByMinutes));
  if (clock.begun && outFrom !== undefined)
    return (
      <span className="small">
        {lateByMinutes > 0 ? <StateMark state="stop" word={`began ${late} too late`} /> : null}{' '}
        <StateMark state={states[state]} word={state === 'in-oven' ? 'in the oven' : 'may come out by the clock'} />{' '}
        {clock.begun.oven ? `${clock.begun.oven}, ` : ''}since <InstantText instant={clock.begun.at} />, may come out at{' '}
        <InstantText instant={new Date(outFrom).toISOString()} /> at the earliest
      </span>
    );
  const left = durationWords(Math.max(0, Math.floor((startBy - now) / 60_000)));
  const words = {
    'too-late': `the bake had to begin ${late} ago, by`,
    urgent: `BAKE NOW: begins within ${left}, by`,
  };
  const word = words[state as keyof typeof words] ?? `the bake begins within ${left}, by`;
  return (
    <span className="small">
      <StateMark state={states[state]} word={word} /> <InstantText instant={new Date(startBy).toISOString()} />
    </span>
  );
}
