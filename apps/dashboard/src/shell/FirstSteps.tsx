import type { Sent } from '@hubwright/contracts/operation';
import { type Role, roleTitles } from '@hubwright/contracts/roles';
import { useQueries } from '@tanstack/react-query';
import { useMe } from '../api/me.ts';
import { mayCall } from '../api/permission.ts';
import { queryFor } from '../api/query.ts';
import { FirstHint } from '../ui/FirstHint.tsx';
import { Link } from '../ui/Link.tsx';
import { StateMark } from '../ui/StateMark.tsx';
import { type FirstStep, firstSteps } from './first-steps.ts';

interface Standing {
  readonly step: FirstStep;
  /** Undefined while it is read, and where this person may not look. */
  readonly isDone: boolean | undefined;
}

function useStandings(roles: readonly Role[]): readonly Standing[] {
  const answers = useQueries({
    queries: firstSteps.map(({ seen }) => ({
      ...queryFor(seen.in, { limit: 20 } as unknown as Sent<typeof seen.in>),
      enabled: mayCall(seen.in, roles),
    })),
  });
  return firstSteps.map((step, place) => {
    const rows = (answers[place]?.data as { rows?: readonly unknown[] } | undefined)?.rows;
    return { step, isDone: rows ? step.seen.isDone(rows) : undefined };
  });
}

function Step({ step, isDone }: Standing) {
  return (
    <li>
      {isDone ? <StateMark state="passed" word="done" /> : <StateMark state="open" word="to do" />}
      <Link href={step.href}>{step.text}</Link>
    </li>
  );
}

/** Who does it, as the access list of the operation says. */
function doers({ by }: FirstStep): string {
  return Array.isArray(by.access) ? by.access.map((role: Role) => roleTitles[role].toLowerCase()).join(' or ') : '';
}

/** What this person sets up first, in order, and what still comes from others. */
export function FirstSteps() {
  const { roles } = useMe();
  const standings = useStandings(roles);
  const mine = standings.filter(({ step }) => mayCall(step.by, roles));
  const others = standings.filter(({ step, isDone }) => !mayCall(step.by, roles) && isDone === false);
  return (
    <FirstHint id={`first-steps.${roles.join('.')}`} title="A new shop: what comes first">
      {mine.length === 0 ? (
        <p>Nothing is for you to set up. Your work stands here once a unit is booked in and its evaluation approved.</p>
      ) : (
        <ul className="first-steps">
          {mine.map((standing) => (
            <Step key={standing.step.id} {...standing} />
          ))}
        </ul>
      )}
      {others.length > 0 ? (
        <details>
          <summary>Still to come from others ({others.length})</summary>
          <ul className="first-steps">
            {others.map(({ step }) => (
              <li key={step.id}>
                <span className="soft small">{doers(step)}</span>
                <span>{step.text}</span>
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </FirstHint>
  );
}
