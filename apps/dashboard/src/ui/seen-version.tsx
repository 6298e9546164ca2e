import { useRef, useState } from 'react';
import { Button } from './Button.tsx';
import { StateShape } from './StateMark.tsx';

/**
 * Keeps what a form was opened with while newer versions arrive by themselves, so that nothing typed is overwritten.
 * Give the form `key={seen.version}`; after success, and on the person's wish, call `takeNewest`.
 */
export function useSeen<T extends { version: number }>(current: T) {
  const [seen, setSeen] = useState(current);
  const latest = useRef(current);
  latest.current = current;
  return { seen, isNewer: current.version !== seen.version, takeNewest: () => setSeen(latest.current) };
}

/** Says that someone else changed the thing while this form was open, and offers to begin again from there. */
export function NewerVersion({ onTake }: { onTake: () => void }) {
  return (
    <div className="newer" role="status">
      <StateShape state="note" />
      <span>
        Someone changed this while you had it open. Your entries are kept until you take over the newer state.
      </span>
      <Button onPress={onTake}>Show the newer state</Button>
    </div>
  );
}
