import { Link } from '../../ui/Link.tsx';
import { type State, StateMark } from '../../ui/StateMark.tsx';
import styles from './step-list.module.css';
import { currentSignOff, type Step, type Traveler } from './traveler.ts';

const phaseWords = { evaluation: 'Evaluation', repair: 'Repair', build: 'Build-up', final: 'Final' } as const;

function markOf(step: Step): { state: State; word: string; initials?: string } {
  const initials = currentSignOff(step)?.person.initials;
  if (step.state === 'signed') return { state: 'signed', word: 'signed', ...(initials ? { initials } : {}) };
  if (step.state === 'failed') return { state: 'stop', word: 'failed', ...(initials ? { initials } : {}) };
  if (step.state === 'not-needed') return { state: 'note', word: 'not needed' };
  return step.blocked ? { state: 'waiting', word: 'not yet' } : { state: 'open', word: 'its turn' };
}

/** The traveler as it hangs on the part: every step in order, signed ones with initials. */
export function StepList({ traveler, opened }: { traveler: Traveler; opened: string | undefined }) {
  return (
    <ol className={styles.steps}>
      {traveler.steps.map((step, place) => (
        <li key={step.id} className={step.id === opened ? styles.opened : ''}>
          {traveler.steps[place - 1]?.phase === step.phase ? null : (
            <p className={styles.phase}>{phaseWords[step.phase]}</p>
          )}
          <span className="row between">
            <span>
              <span className="soft quantity">{step.sequence}</span>{' '}
              <Link href={`/travelers/${traveler.id}?step=${step.id}`}>{step.title}</Link>
            </span>
            <StateMark {...markOf(step)} />
          </span>
        </li>
      ))}
    </ol>
  );
}
