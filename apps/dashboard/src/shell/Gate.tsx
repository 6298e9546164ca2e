import { useState } from 'react';
import { useMe } from '../api/me.ts';
import { DuePage } from '../views/outside/DuePage.tsx';
import { Shell } from './Shell.tsx';

/** Lets nobody to a page before what they must set up first is set up. */
export function Gate() {
  const { id, due } = useMe();
  const [inFront, setInFront] = useState<string | null>(due);
  const standsFor = due ?? inFront;
  if (standsFor === null) return <Shell />;
  if (inFront === null && due !== null) setInFront(due);
  return <DuePage key={`${id} ${inFront}`} onDone={() => setInFront(null)} />;
}
