import { StateMark } from '../../ui/StateMark.tsx';
import type { Checklist } from './releases.ts';

/** The six facts behind the word “overhauled” and the signed steps that show each. */
export function FactsShown({ checklist, isReleased }: { checklist: Checklist; isReleased: boolean }) {
  return (
    <div className="stack">
      <p>
        The record {isReleased ? 'says' : 'will say'} <strong>{checklist.word}</strong>: {checklist.wordBasis}
      </p>
      <ul className="lines">
        {checklist.facts.map((each) => (
          <li key={each.fact}>
            <StateMark state={each.steps.length > 0 ? 'signed' : 'open'} word={each.fact} />
            <span className="small soft">
              {each.steps.length > 0
                ? `${each.steps.length} signed, last “${each.steps.at(-1)?.title}” by ${each.steps.at(-1)?.by}`
                : 'no signed step shows it'}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}
