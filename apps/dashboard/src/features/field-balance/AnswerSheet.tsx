import type { FieldAnswer } from '@hubwright/contracts/field-balance/shapes';
import { StateMark } from '../../ui/StateMark.tsx';
import { degrees, type FieldBalance, grams } from './field-balance.ts';

function Proposal(props: { title: string; of: FieldAnswer['beside']; balance: FieldBalance }) {
  const { of, balance } = props;
  const { fillings, residual, predicted } = of;
  const unit = balance.spec?.unit ?? '';
  return (
    <div>
      <h3>{props.title}</h3>
      {fillings.length === 0 ? (
        <p>Nothing of the stock comes nearer than leaving it as it is.</p>
      ) : (
        <ul className="lines">
          {fillings.map(({ place, mass, pieces }) => (
            <li key={place}>
              <span>
                <strong>{place}</strong> {pieces.map(({ partNumber, count }) => `${count} × ${partNumber}`).join(', ')}
              </span>
              <span className="quantity">{grams(mass)}</span>
            </li>
          ))}
        </ul>
      )}
      <p className="small">
        Then expected{' '}
        {predicted
          .map(({ amplitude }, at) => {
            const { rpm = 0, error = 0 } = balance.answer?.speeds[at] ?? {};
            return `${amplitude.toFixed(2)} ${unit} at ${rpm} rpm, in 95 of 100 within ${error.toFixed(2)}`;
          })
          .join('; ')}
        . {residual.mass < 0.05 ? '' : `Whole pieces leave ${grams(residual.mass)} at ${degrees(residual.angle)}.`}
      </p>
    </div>
  );
}

/** What the runs say: influence at each speed, the weight that is asked for, and pieces of stock that make it. */
export function AnswerSheet({ balance }: { balance: FieldBalance }) {
  const { answer, unanswered, spec } = balance;
  if (unanswered) return <StateMark state="hold" word={unanswered} />;
  if (!answer) return null;
  const { change, speeds, beside, anew } = answer;
  const weak = speeds.filter(({ weakTrial }) => weakTrial);
  return (
    <section className="stack tight" aria-label="What the runs say">
      <h2>
        Add {grams(change.mass)} at {degrees(change.angle)}
      </h2>
      <p className="small">
        {speeds.length > 1 ? `Least squares over ${speeds.length} speeds. ` : ''}
        {speeds
          .map(
            ({ rpm, influence }) =>
              `At ${rpm} rpm one gram does ${influence.amplitude.toFixed(4)} ${spec?.unit} at ${degrees(influence.phase)}`,
          )
          .join('; ')}
        .
      </p>
      {weak.length > 0 ? (
        <StateMark
          state="hold"
          word={`weak trial at ${weak.map(({ rpm }) => rpm).join(', ')} rpm: a heavier one, within the limits, tells more`}
        />
      ) : null}
      {answer.scattersMore ? (
        <StateMark
          state="hold"
          word={`readings with the same weights differ by ${answer.scatter.toFixed(3)} ${spec?.unit}, more than the data expects`}
        />
      ) : null}
      <Proposal title={anew ? 'Beside what stands' : 'In whole pieces of stock'} of={beside} balance={balance} />
      {anew ? <Proposal title="Or all of this order’s weights off, and anew" of={anew} balance={balance} /> : null}
    </section>
  );
}
