import { spotText } from '@hubwright/contracts/findings/spot';
import type { ReactNode } from 'react';
import { AgeText, Amount } from '../../format/values.tsx';
import { Link } from '../../ui/Link.tsx';
import { SpotPicture } from '../../ui/pictures/SpotPicture.tsx';
import { type State, StateMark } from '../../ui/StateMark.tsx';
import { EarlierDispositions } from './EarlierDispositions.tsx';
import { type Finding, findingMark } from './findings.ts';

const stepMarks: Partial<Record<string, State>> = { signed: 'signed', failed: 'stop', 'not-needed': 'note' };

/** One finding whole: what, where, who, what it needs and what was decided. */
export function FindingSheet({
  finding,
  photos,
  actions,
}: {
  finding: Finding;
  photos: ReactNode;
  actions: ReactNode;
}) {
  return (
    <section className="sheet stack" aria-label={`Finding ${finding.number}`}>
      <p className="row between">
        <strong className="code">{finding.number}</strong>
        <StateMark {...findingMark(finding)} />
      </p>
      <p>
        {finding.traveler.title}: {finding.areaTitle}, {finding.place}
        {finding.critical ? <strong> (critical area)</strong> : null}
      </p>
      <p>
        {finding.damage.replaceAll('-', ' ')}
        {finding.corrosionClass ? `, ${finding.corrosionClass}` : ''}: {finding.description}
      </p>
      {finding.spot ? (
        <SpotPicture
          title={`Where ${finding.number} is`}
          words={spotText(finding.spot)}
          on={finding.spot.on}
          marked={[{ label: '×', spot: finding.spot }]}
        />
      ) : null}
      <p className="small soft">
        Raised by {finding.raisedBy.displayName} <AgeText instant={finding.raisedAt} /> ago on{' '}
        <Link href={`/travelers/${finding.traveler.id}`}>{finding.traveler.number}</Link> of{' '}
        <Link href={`/work-orders/${finding.workOrder.id}`}>{finding.workOrder.number}</Link>,{' '}
        {finding.workOrder.customer}
        {finding.decidedBy ? `. Decided by ${finding.decidedBy.displayName}. ${finding.dispositionNote}` : ''}
      </p>
      {photos}
      {finding.steps.length > 0 ? (
        <ul className="lines">
          {finding.steps.map((step) => (
            <li key={step.id}>
              <span>{step.title}</span>
              <StateMark state={stepMarks[step.state] ?? 'open'} word={step.state.replaceAll('-', ' ')} />
            </li>
          ))}
        </ul>
      ) : null}
      {finding.parts.length > 0 ? (
        <ul className="lines">
          {finding.parts.map((part) => (
            <li key={part.id}>
              <span>
                {part.quantity} <span className="code">{part.number}</span> {part.description} for {part.position}
              </span>
            </li>
          ))}
        </ul>
      ) : null}
      {finding.labourMinor > 0 ? (
        <p>
          Labour: <Amount minor={finding.labourMinor} />
        </p>
      ) : null}
      <EarlierDispositions finding={finding} />
      <div className="row">{actions}</div>
    </section>
  );
}
