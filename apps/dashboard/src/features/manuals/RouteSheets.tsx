import { countOf } from '../../format/numbers.ts';
import { levelWords, processWords } from '../../format/process-words.ts';
import { stepNotes } from '../../format/step-words.ts';
import { Caution } from '../../ui/Caution.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import styles from './manuals.module.css';
import { kindWords, type RevisionModel, scopesInWords } from './manuals.ts';

type Route = RevisionModel['routes'][number];
type Step = Route['steps'][number];
type Measure = Step['measures'][number];

function limitWords({ low, high, unit }: Measure): string {
  if (low !== undefined && high !== undefined) return `${low} to ${high} ${unit}`;
  return low === undefined ? `at most ${high} ${unit}` : `at least ${low} ${unit}`;
}

function Limits({ measures }: { measures: readonly Measure[] }) {
  return (
    <dl className={styles.limits}>
      {measures.map((each) => (
        <div key={each.name}>
          <dt>{each.name}</dt>
          <dd className="quantity">{limitWords(each)}</dd>
        </div>
      ))}
    </dl>
  );
}

function StepLine({ step }: { step: Step }) {
  return (
    <li>
      <div className={styles.step}>
        <span>
          <strong>{step.title}</strong>{' '}
          <span className="soft small">
            {processWords[step.process].toLowerCase()}, {levelWords[step.level]}
            {step.instrumentKind ? `, with a ${kindWords(step.instrumentKind)}` : ''}
          </span>
        </span>
        <span className="soft small quantity">
          {step.phase}, {step.standardMinutes} min
        </span>
      </div>
      {step.instruction ? <p className="small">{step.instruction}</p> : null}
      {stepNotes(step).map((note) => (
        <p key={note} className="small soft">
          {note}
        </p>
      ))}
      {step.caution ? <Caution>{step.caution}</Caution> : null}
      {step.measures.length > 0 ? <Limits measures={step.measures} /> : null}
    </li>
  );
}

/** How each class of part goes through the shop: steps in order, with the limits as the revision prints them. */
export function RouteSheets({ routes }: { routes: readonly Route[] }) {
  if (routes.length === 0) return <EmptyState title="This revision has no routes for this model" />;
  return (
    <div>
      {routes.map((route) => (
        <details key={route.id} className={styles.route}>
          <summary>
            <strong>{route.title}</strong>{' '}
            <span className="soft">
              {route.material ? `${route.material} ` : ''}
              {route.partClass.replaceAll('-', ' ')}, {scopesInWords(route.scopes)},{' '}
              {countOf(route.steps.length, 'step')}
            </span>
          </summary>
          <ol className={styles.steps}>
            {route.steps.map((step) => (
              <StepLine key={step.title} step={step} />
            ))}
          </ol>
        </details>
      ))}
    </div>
  );
}
