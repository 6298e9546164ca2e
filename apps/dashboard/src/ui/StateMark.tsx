import { useId } from 'react';

/** The states the whole dashboard speaks of. Each has a shape and a word of its own; colour only helps. */
export type State = 'have' | 'on-order' | 'short' | 'signed' | 'passed' | 'waiting' | 'hold' | 'stop' | 'note' | 'open';

const words: Record<State, string> = {
  have: 'have',
  'on-order': 'on order',
  short: 'short',
  signed: 'signed',
  passed: 'passed',
  waiting: 'waiting',
  hold: 'on hold',
  stop: 'stop',
  note: 'note',
  open: 'open',
};

/** Filled, hatched, hollow, ticked, barred, crossed: told apart without colour and at arm's length. */
export function StateShape({ state }: { state: State }) {
  const hatch = useId();
  return (
    <svg className={`state-shape ${state}`} viewBox="0 0 14 14" aria-hidden="true">
      {state === 'on-order' ? (
        <pattern id={hatch} width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect className="hatch" width="2" height="4" />
        </pattern>
      ) : null}
      <Shape state={state} hatch={`url(#${hatch})`} />
    </svg>
  );
}

function Shape({ state, hatch }: { state: State; hatch: string }) {
  switch (state) {
    case 'have':
      return <rect className="fill" x="1" y="1" width="12" height="12" rx="1.500" />;
    case 'on-order':
      return <rect className="edge" x="1.500" y="1.500" width="11" height="11" rx="1.500" fill={hatch} />;
    case 'short':
      return <rect className="edge hollow" x="1.500" y="1.500" width="11" height="11" rx="1.500" />;
    case 'signed':
    case 'passed':
      return <path className="stroke" d="M1.500 7.500 5.500 11.500 12.500 2.500" />;
    case 'waiting':
      return <path className="edge hollow" d="M2 1.500h10L7 7l5 5.500H2L7 7z" />;
    case 'hold':
      return <path className="fill" d="M2 1h3.500v12H2zM8.500 1H12v12H8.500z" />;
    case 'stop':
      return <path className="stroke" d="M2 2l10 10M12 2 2 12" />;
    case 'note':
      return <circle className="fill" cx="7" cy="7" r="4" />;
    case 'open':
      return <circle className="edge hollow" cx="7" cy="7" r="5" />;
  }
}

/** A state as shape and word: `<StateMark state="short" word="short 3" />`. A signed step carries the signer's initials. */
export function StateMark({ state, word, initials }: { state: State; word?: string; initials?: string }) {
  return (
    <span className={`state-mark ${state}`}>
      <StateShape state={state} />
      <span>{word ?? words[state]}</span>
      {initials ? <span className="initials">{initials}</span> : null}
    </span>
  );
}
