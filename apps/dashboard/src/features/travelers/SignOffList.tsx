import { InstantText } from '../../format/values.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import styles from './measure-entries.module.css';
import { SaidLines } from './sheets/SaidLines.tsx';
import { SheetPicture } from './sheets/SheetPicture.tsx';
import type { Measure, SignOff, Step } from './traveler.ts';

function Values({ signOff, measures }: { signOff: SignOff; measures: readonly Measure[] }) {
  if (signOff.values.length === 0) return null;
  return (
    <ul className={`small ${styles.signed}`}>
      {signOff.values.map((value) => {
        const measure = measures.find((each) => each.id === value.measureId);
        return (
          <li key={value.measureId}>
            <span>
              {measure?.name}: <strong>{value.value}</strong> {measure?.unit}
            </span>
            <StateMark state={value.pass ? 'passed' : 'stop'} word={value.pass ? 'inside' : 'outside'} />
          </li>
        );
      })}
    </ul>
  );
}

/** A sheet as it was signed: in words, why it was not good, and drawn where its kind has a picture. */
function SignedSheetShown({ sheet }: { sheet: NonNullable<SignOff['sheet']> }) {
  return (
    <>
      <SaidLines said={sheet.said} />
      {sheet.reasons.map((reason) => (
        <p key={reason} className="small state-sentence">
          <StateMark state="stop" word={reason} />
        </p>
      ))}
      {sheet.drawn ? <SheetPicture drawn={sheet.drawn} /> : null}
    </>
  );
}

function wordOf({ supersededById, countersignsId, result }: SignOff): string {
  if (supersededById) return 'corrected since';
  if (countersignsId) return 'supervised';
  return result === 'pass' ? 'signed' : 'failed';
}

/** Every signature of a step, also those that were corrected: nothing that was signed disappears. */
export function SignOffList({ step }: { step: Step }) {
  return (
    <ul className="lines">
      {step.signOffs.map((signOff) => (
        <li key={signOff.id}>
          <div className="stack tight">
            <p>
              <StateMark
                state={signOff.supersededById ? 'note' : signOff.result === 'pass' ? 'signed' : 'stop'}
                word={wordOf(signOff)}
                initials={signOff.person.initials}
              />{' '}
              {signOff.person.displayName}
              {signOff.supervisor ? ` (trainee, supervised by ${signOff.supervisor.displayName})` : ''},{' '}
              <InstantText instant={signOff.signedAt} />
              {signOff.lateReason ? (
                <>
                  , done <InstantText instant={signOff.performedAt} /> ({signOff.lateReason})
                </>
              ) : null}
            </p>
            <Values signOff={signOff} measures={step.measures} />
            {signOff.sheet ? <SignedSheetShown sheet={signOff.sheet} /> : null}
            {signOff.form.length > 0 ? (
              <p className="small">{signOff.form.map(({ name, value }) => `${name}: ${value}`).join(', ')}</p>
            ) : null}
            <p className="small soft">
              “{signOff.meaning}” Revision {signOff.revision}
              {signOff.instrument ? `, with ${signOff.instrument.tag} ${signOff.instrument.title}` : ''}
              {signOff.equipment ? `, in or with ${signOff.equipment}` : ''}
              {signOff.lots.length > 0 ? `, of ${signOff.lots.join('; ')}` : ''}, as {signOff.authorisation.process},{' '}
              {signOff.authorisation.level}
            </p>
          </div>
        </li>
      ))}
    </ul>
  );
}
