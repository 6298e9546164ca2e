import { dimensionTitles } from '@hubwright/contracts/manuals/words';
import type { WorkOrderDimensions } from '@hubwright/contracts/work-orders/dimension-operations';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type State, StateMark } from '../../ui/StateMark.tsx';

type Spread = WorkOrderDimensions['spreads'][number];
export type SetQuestion = WorkOrderDimensions['questions'][number];

const verdicts: Record<Spread['verdict'], { state: State; word: string }> = {
  pass: { state: 'passed', word: 'within' },
  fail: { state: 'stop', word: 'too far apart' },
  incomplete: { state: 'open', word: 'not all measured' },
};

function amongWords({ among, master }: Spread): string {
  if (among === 'master') return `from the master, ${master}`;
  return among === 'set' ? 'between any two blades' : 'between blades across the hub';
}
function differenceWords({ spread, between }: NonNullable<Spread['widest']>): string {
  return between.length === 1
    ? `${between[0]} differs most, by ${spread}`
    : `${between.join(' and ')} differ by ${spread}`;
}

function SpreadLine({ spread }: { spread: Spread }) {
  const { dimension, station, most, widest, missing } = spread;
  return (
    <li>
      <span>
        <strong>
          {dimensionTitles[dimension]}
          {station === null ? '' : ` at station ${Number(station)}`}
        </strong>{' '}
        <span className="soft">
          at most {most} {amongWords(spread)}
        </span>
        <br />
        {widest ? differenceWords(widest) : 'No two blades are measured yet'}
        {missing.length > 0 ? <span className="soft">; not measured: {missing.join(', ')}</span> : null}
      </span>
      <StateMark {...verdicts[spread.verdict]} />
    </li>
  );
}

/** The blades as one set: how far they differ, who was decided on with whom, and where one hints at the others. */
export function BladeSet(props: {
  of: WorkOrderDimensions;
  /** Given to those who may decide. */
  onDecide: ((question: SetQuestion) => void) | undefined;
}) {
  const { spreads, questions, decisions, alike } = props.of;
  return (
    <ul className="lines">
      {questions.map((question) => (
        <li key={question.findingId}>
          <span>
            <strong>
              {question.number} rejected {question.position}
            </strong>
            : does each of {question.mates.map(({ position }) => position).join(', ')} stay?
          </span>
          {props.onDecide ? (
            <Button weight="next" onPress={() => props.onDecide?.(question)}>
              Decide on the set
            </Button>
          ) : (
            <StateMark state="waiting" word="an inspector decides" />
          )}
        </li>
      ))}
      {spreads.map((spread) => (
        <SpreadLine key={`${spread.dimension} ${spread.station} ${spread.among}`} spread={spread} />
      ))}
      {alike.map(({ area, found, lookAt }) => (
        <li key={area}>
          <span>
            Corrosion or wear at <strong>{area}</strong> of {found.join(', ')}: look there on {lookAt.join(', ')} too.
          </span>
          <StateMark state="note" word="they come together" />
        </li>
      ))}
      {decisions.map((one) => (
        <li key={one.number}>
          <span>
            {one.number}, {one.position} rejected:{' '}
            {one.mates.map((mate) => `${mate.position} ${mate.stays ? 'stays' : 'rejected with it'}`).join(', ')}.{' '}
            <span className="soft">
              {one.reason}, <DateText date={one.decidedAt.slice(0, 10)} />
            </span>
          </span>
          <StateMark state="signed" word="decided" />
        </li>
      ))}
    </ul>
  );
}
