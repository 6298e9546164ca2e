import { type Role, roleTitles } from '@hubwright/contracts/roles';
import { useState } from 'react';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type Hold, LiftHold } from './lift-hold.tsx';
import { holdWords } from './order-words.ts';

function HoldLine({ hold, roles, onLift }: { hold: Hold; roles: readonly Role[]; onLift: () => void }) {
  const isOpen = hold.liftedAt === null;
  return (
    <li>
      <div>
        <StateMark state={isOpen ? 'hold' : 'passed'} word={isOpen ? 'holds work' : 'lifted'} />{' '}
        <strong>{holdWords[hold.kind]}</strong>: {hold.reason}
        <p className="small soft">
          Placed by {hold.placedBy}, <InstantText instant={hold.placedAt} />
          {hold.liftedAt ? (
            <>
              ; lifted by {hold.liftedBy}, <InstantText instant={hold.liftedAt} />: {hold.liftReason}
            </>
          ) : (
            `; ${roleTitles[hold.liftedByRole].toLowerCase()} lifts it`
          )}
        </p>
      </div>
      {isOpen && roles.includes(hold.liftedByRole) ? (
        <Button onPress={onLift}>
          Lift the hold<span className="only-heard">: {hold.reason}</span>
        </Button>
      ) : null}
    </li>
  );
}

/** Every hold there was, open ones first; the role a hold names lifts it. */
export function HoldList({ holds, roles }: { holds: readonly Hold[]; roles: readonly Role[] }) {
  const [lifted, setLifted] = useState<Hold>();
  const sorted = [...holds].sort((a, b) => Number(a.liftedAt !== null) - Number(b.liftedAt !== null));
  if (holds.length === 0) return <EmptyState title="Nothing ever held it" />;
  return (
    <>
      <ul className="lines">
        {sorted.map((hold) => (
          <HoldLine key={hold.id} hold={hold} roles={roles} onLift={() => setLifted(hold)} />
        ))}
      </ul>
      {lifted ? <LiftHold hold={lifted} onClose={() => setLifted(undefined)} /> : null}
    </>
  );
}
