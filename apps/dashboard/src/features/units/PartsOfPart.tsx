import { assemblyOperations } from '@hubwright/contracts/units/assembly-operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { useToday } from '../../format/use-today.ts';
import { Button } from '../../ui/Button.tsx';
import { FitWithin, TakeOutOf } from './fit-within.tsx';
import type { Unit } from './units.ts';

/** What may be recorded of a part that holds parts itself, or sits in one; nothing on a unit's own page. */
export function PartsOfPart({ part }: { part: Unit }) {
  const mayFit = useMay(assemblyOperations.fitWithin);
  const today = useToday();
  const [doing, setDoing] = useState<'fit' | 'take-out'>();
  if (!mayFit || part.kind === 'assembly' || part.joinedInto) return null;
  const isInPart = part.installedIn.some(({ toDate, isUnit }) => toDate === null && !isUnit);
  return (
    <div className="row">
      <Button onPress={() => setDoing('fit')}>Record a part of it</Button>
      {isInPart ? <Button onPress={() => setDoing('take-out')}>Taken out</Button> : null}
      {doing === 'fit' ? <FitWithin parent={part} today={today} onClose={() => setDoing(undefined)} /> : null}
      {doing === 'take-out' ? <TakeOutOf part={part} today={today} onClose={() => setDoing(undefined)} /> : null}
    </div>
  );
}
