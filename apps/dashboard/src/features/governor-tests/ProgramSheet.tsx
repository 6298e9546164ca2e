import { pointKindWords } from '@hubwright/contracts/governor-tests/program';
import { engineSpeed } from '@hubwright/rules/governor';
import { countOf } from '../../format/numbers.ts';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { limitWords, type Point, type Program, unitWord } from './governor.ts';

/** What a point is about, where its name does not say it. */
function kindBeside({ name, kind }: Point): string {
  const word = pointKindWords[kind];
  return word.toLowerCase() === name.toLowerCase() ? '' : word;
}

/** The whole of one program, as the manual has it. */
export function ProgramSheet(props: { program: Program; onClose: () => void; onIssue?: () => void }) {
  const { program, onClose, onIssue } = props;
  const { model, application, revision, content } = program;
  const { rotation, driveRatio, oil, points, adjustments } = content;
  const facts = [
    ['Application', `${application.airframe}, ${application.engine}, ${application.position}`],
    ['By', `${revision.manual} revision ${revision.revision}: ${program.basis}`],
    ['Drive', `${rotation}, ratio ${driveRatio} governor to engine`],
    ['Oil', `${oil.kind}, ${oil.low} to ${oil.high} ${unitWord(oil.unit)}`],
  ] as const;
  return (
    <Dialog title={`${model.designation}, issue ${program.issue}`} isOpen onClose={onClose} width="wide">
      <div className="stack">
        <dl className="facts">
          {facts.map(([name, value]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
        <ol className="lines">
          {points.map((point) => (
            <li key={point.name}>
              <span>
                <strong>{point.name}</strong>{' '}
                <span className="soft small">
                  {kindBeside(point)}
                  {point.atRpm
                    ? `, at ${point.atRpm} rpm (engine ${engineSpeed(Number(point.atRpm), Number(driveRatio)).toFixed(0)})`
                    : ''}
                  {point.method === 'rounding' ? `, rounded to ${countOf(point.decimals, 'place')}` : ''}
                  {point.channel ? `, channel ${point.channel}` : ''}
                </span>
                {point.instruction ? <span className="small"> {point.instruction}</span> : null}
              </span>
              <span>{limitWords(point)}</span>
            </li>
          ))}
        </ol>
        {adjustments.map(({ what, reopens }) => (
          <p key={what} className="small">
            After the {what}: {reopens.join(', ')} again.
          </p>
        ))}
        <p className="soft small">
          Issued by {program.issuedBy.displayName}, <InstantText instant={program.issuedAt} />
        </p>
        {onIssue ? (
          <div className="row">
            <Button onPress={onIssue}>Issue it anew from here</Button>
          </div>
        ) : null}
      </div>
    </Dialog>
  );
}
