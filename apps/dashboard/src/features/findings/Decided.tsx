import type { findingOperations } from '@hubwright/contracts/findings/operations';
import type { Sent } from '@hubwright/contracts/operation';
import type { Finding } from './findings.ts';
import type { PartDraft } from './parts-needed.tsx';

type Decision = Omit<Sent<typeof findingOperations.disposeFinding>, 'signature'>;

/** What is signed, in short. */
export function Decided({ finding, input, parts }: { finding: Finding; input: Decision; parts: PartDraft[] }) {
  return (
    <>
      <p>
        <strong>{input.disposition}</strong>: {finding.number}, {finding.traveler.title}, {finding.areaTitle},{' '}
        {finding.place}
      </p>
      <p className="small">{finding.description}</p>
      {input.note ? <p className="small">{input.note}</p> : null}
      <ul className="small">
        {input.steps?.map((step) => (
          <li key={step.title}>
            {step.title} ({step.process.replaceAll('-', ' ')}, {step.standardMinutes} min)
          </li>
        ))}
        {input.parts?.length
          ? parts.map((each) => (
              <li key={`${each.part?.id} ${each.position}`}>
                {each.quantity} {each.part?.name} for {each.position}
              </li>
            ))
          : null}
      </ul>
    </>
  );
}
