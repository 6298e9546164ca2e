import { Amount, InstantText } from '../../format/values.tsx';
import type { Finding } from './findings.ts';

/** What was decided before, struck, with the reason why it no longer holds. */
export function EarlierDispositions({ finding }: { finding: Finding }) {
  if (finding.superseded.length === 0) return null;
  return (
    <ul className="lines" aria-label="Earlier dispositions">
      {finding.superseded.map((each) => (
        <li key={each.supersededAt}>
          <div className="stack tight">
            <p>
              <s>
                {each.disposition}
                {each.note ? `: ${each.note}` : ''}
                {each.steps.length > 0 ? `; ${each.steps.join(', ')}` : ''}
                {each.parts.map((part) => `; ${part.quantity} ${part.number} for ${part.position}`).join('')}
                {each.labourMinor > 0 ? (
                  <>
                    ; labour <Amount minor={each.labourMinor} />
                  </>
                ) : null}
              </s>
            </p>
            <p className="small">Superseded: {each.reason}</p>
            <p className="small soft">
              signed by {each.decidedBy.displayName} <InstantText instant={each.decidedAt} />
            </p>
          </div>
        </li>
      ))}
    </ul>
  );
}
