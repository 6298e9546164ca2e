import { judgeCalibration } from '@hubwright/rules/measurement';
import { Button } from '../../ui/Button.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { StateMark } from '../../ui/StateMark.tsx';

export interface PointDraft {
  readonly nominal: string;
  readonly asFound: string;
  readonly asLeft: string;
  readonly allowed: string;
}
const emptyPoint: PointDraft = { nominal: '', asFound: '', asLeft: '', allowed: '' };
const columns = [
  ['nominal', 'Nominal'],
  ['asFound', 'As found'],
  ['asLeft', 'As left'],
  ['allowed', 'Error allowed'],
] as const;

/** What the readings say so far; nothing while one is missing or is no number. */
function verdict(points: readonly PointDraft[]) {
  const numbers = points.map((point) => ({
    nominal: Number(point.nominal),
    asFound: Number(point.asFound),
    asLeft: Number(point.asLeft),
    allowed: Number(point.allowed),
  }));
  const isWhole = points.every((point) => Object.values(point).every((text) => text.trim() !== ''));
  if (points.length === 0 || !isWhole) return undefined;
  try {
    return judgeCalibration(numbers);
  } catch {
    return undefined;
  }
}

/** The points of a certificate, each typed as it stands there; the verdict follows while typing. */
export function PointFields({
  points,
  onChange,
}: {
  points: readonly PointDraft[];
  onChange: (to: PointDraft[]) => void;
}) {
  const judged = verdict(points);
  const put = (at: number, changes: Partial<PointDraft>) =>
    onChange(points.map((point, index) => (index === at ? { ...point, ...changes } : point)));
  return (
    <fieldset className="stack tight">
      <legend>Points on the certificate</legend>
      {points.map((point, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a point is told from the next by its place alone
        <div className="row" key={at}>
          {columns.map(([name, title]) => (
            <DecimalField
              key={name}
              name={`points/${at}/${name}`}
              label={`${title}, point ${at + 1}`}
              value={point[name]}
              onChange={(text) => put(at, { [name]: text })}
              isRequired
            />
          ))}
          <Button
            weight="quiet"
            onPress={() => onChange(points.filter((_, index) => index !== at))}
            aria-label={`Leave out point ${at + 1}`}
          >
            Leave out
          </Button>
        </div>
      ))}
      <div className="row">
        <Button onPress={() => onChange([...points, emptyPoint])}>Add a point</Button>
        <span role="status">
          {judged?.asFound === 'out' ? (
            <StateMark state="stop" word={`found out of tolerance, worst error ${judged.worstFound}`} />
          ) : null}
          {judged?.asFound === 'good' ? (
            <StateMark state="passed" word={`found good, worst error ${judged.worstFound}`} />
          ) : null}
        </span>
      </div>
      {judged?.asFound === 'out' ? (
        <p>
          Every sign-off made with it since it was last known good comes under review, and holds the release of its
          unit.
        </p>
      ) : null}
    </fieldset>
  );
}
