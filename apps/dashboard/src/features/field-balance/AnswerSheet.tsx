import type { FieldAnswer } from '@hubwright/contracts/field-balance/shapes';
import { countOf } from '../../format/numbers.ts';
import { StateMark } from '../../ui/StateMark.tsx';
import { allPlaces, degrees, type FieldBalance, grams, sensorsOf } from './field-balance.ts';

function Proposal(props: { title: string; of: FieldAnswer['beside']; balance: FieldBalance }) {
  const { of, balance } = props;
  const { fillings, residuals, predicted } = of;
  const unit = balance.spec?.unit ?? '';
  const sensors = sensorsOf(balance.setUp);
  const inPlane = (at: number) => planeWords(balance.answer?.changes[at]?.plane);
  const planeAt = (name: string) => {
    const plane = allPlaces(balance).find((one) => one.name === name)?.planeName;
    return plane ? `${plane}, ` : '';
  };
  const left = residuals.flatMap(({ mass, angle }, at) =>
    mass < 0.05 ? [] : [`${grams(mass)} at ${degrees(angle)}${inPlane(at)}`],
  );
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
                <strong>{place}</strong> {planeAt(place)}
                {pieces.map(({ partNumber, count }) => `${count} × ${partNumber}`).join(', ')}
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
            const { rpm = 0, error = 0, sensor = 0 } = balance.answer?.speeds[at] ?? {};
            const where = sensors ? `, sensor ${sensor + 1}` : '';
            return `${amplitude.toFixed(2)} ${unit} at ${rpm} rpm${where}, in 95 of 100 within ${error.toFixed(2)}`;
          })
          .join('; ')}
        . {left.length === 0 ? '' : `Whole pieces leave ${left.join(' and ')}.`}
      </p>
    </div>
  );
}

/** One weight at a speed and sensor, plane by plane. */
function Influence({ balance, of }: { balance: FieldBalance; of: FieldAnswer['speeds'][number] }) {
  const sensors = sensorsOf(balance.setUp);
  const does = of.influences.map(({ amplitude, phase }, at) => {
    const plane = planeWords(balance.answer?.changes[at]?.plane);
    return `one gram${plane} does ${amplitude.toFixed(4)} ${balance.spec?.unit} at ${degrees(phase)}`;
  });
  return (
    <>
      At {of.rpm} rpm{sensors ? `, sensor ${of.sensor + 1},` : ''} {does.join(', ')}.{' '}
    </>
  );
}

const Doubt = ({ children }: { children: string }) => (
  <p className="state-sentence">
    <StateMark state="hold" word={children} />
  </p>
);

/** What does not tell enough, or more than it should. */
function Doubts({ answer, balance }: { answer: FieldAnswer; balance: FieldBalance }) {
  const sensors = sensorsOf(balance.setUp);
  const weak = answer.speeds.filter(({ weakTrial }) => weakTrial);
  const unit = balance.spec?.unit;
  const where = weak.map(({ rpm, sensor }) => (sensors ? `${rpm} rpm, sensor ${sensor + 1}` : `${rpm} rpm`));
  return (
    <>
      {weak.length > 0 ? (
        <Doubt>{`weak trial at ${where.join(', ')}: a heavier one, within the limits, tells more`}</Doubt>
      ) : null}
      {answer.changes.length > 1 && answer.weakPlanes.length > 0 ? (
        <Doubt>{`weak trial in ${answer.weakPlanes.join(', ')}: a heavier one, within the limits, tells more`}</Doubt>
      ) : null}
      {answer.scattersMore ? (
        <Doubt>
          {`readings with the same weights differ by ${answer.scatter.toFixed(3)} ${unit}, more than the data expects`}
        </Doubt>
      ) : null}
    </>
  );
}

/** What the runs say: influence of each plane at each speed and sensor, the weights that are asked for, and pieces of stock that make them. */
export function AnswerSheet({ balance }: { balance: FieldBalance }) {
  const { answer, unanswered } = balance;
  if (unanswered) return <Doubt>{unanswered}</Doubt>;
  if (!answer) return null;
  const { changes, speeds, beside, anew } = answer;
  return (
    <section className="stack tight" aria-label="What the runs say">
      <h2>
        Add{' '}
        {changes.map(({ mass, angle, plane }) => `${grams(mass)} at ${degrees(angle)}${planeWords(plane)}`).join(', ')}
      </h2>
      <p className="small">
        {speeds.length > 1 ? `Least squares over ${readingsCounted(balance)}. ` : ''}
        {speeds.map((of) => (
          <Influence key={`${of.rpm} ${of.sensor}`} balance={balance} of={of} />
        ))}
      </p>
      <Doubts answer={answer} balance={balance} />
      <Proposal title={anew ? 'Beside what stands' : 'In whole pieces of stock'} of={beside} balance={balance} />
      {anew ? <Proposal title="Or all of this order’s weights off, and anew" of={anew} balance={balance} /> : null}
    </section>
  );
}

const planeWords = (plane: string | null | undefined) => (plane ? ` in ${plane}` : '');

function readingsCounted({ answer, setUp }: FieldBalance): string {
  const speeds = answer?.speeds.filter(({ sensor }) => sensor === 0).length ?? 0;
  const said = countOf(speeds, 'speed');
  return setUp?.secondSensor ? `${said} of two sensors` : said;
}
