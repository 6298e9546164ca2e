import { useEffect, useState } from 'react';
import { useToday } from '../../format/use-today.ts';
import { StateMark } from '../../ui/StateMark.tsx';
import { type CheckStanding, type Equipment, type Mark, standingMark } from './equipment.ts';

/** Milliseconds now, counted on while the page stands. */
function useNow(): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 30_000);
    return () => clearInterval(timer);
  }, []);
  return now;
}

/** What shuts it comes before what only ends soon. */
function rankOf({ mark, standing }: { mark: Mark; standing: CheckStanding }): number {
  if (mark.state === 'stop') return 0;
  if (standing.state === 'missing') return 1;
  return mark.state === 'hold' ? 2 : 3;
}

/** The marks of every check, the worst first. */
export function useMarks(equipment: Equipment) {
  const [now, today] = [useNow(), useToday()];
  const marks = equipment.checks.flatMap((check) => {
    const standing = equipment.standings.find(({ name }) => name === check.name);
    return standing ? [{ check, standing, mark: standingMark(check, standing, { now, today }) }] : [];
  });
  return marks.sort((a, b) => rankOf(a) - rankOf(b));
}

/** One mark for the whole of it: fit, or the worst of what is not. */
export function EquipmentState({ equipment }: { equipment: Equipment }) {
  const [worst] = useMarks(equipment);
  if (!equipment.inService) return <StateMark state="note" word="out of service" />;
  if (!worst || worst.mark.state === 'passed') return <StateMark state="passed" word="fit for work" />;
  return <StateMark state={worst.mark.state} word={`${worst.check.name}: ${worst.mark.word}`} />;
}
