import type { ProblemError } from '../api/problem.ts';
import { StateShape } from './StateMark.tsx';

/** Names of people or things a problem carries, when it carries any. */
function namesIn(details: Readonly<Record<string, unknown>>): [string, string[]][] {
  return Object.entries(details).flatMap(([key, value]): [string, string[]][] => {
    if (!Array.isArray(value) || !value.every((item) => typeof item === 'string')) return [];
    return [[key, value as string[]]];
  });
}

/** The explained no: "No, because …", what stands in the way by name, and what to do next. For rules, not for typing errors. */
export function Refusal({ problem, children }: { problem: ProblemError; children?: React.ReactNode }) {
  const { detail, title, next, details, status } = problem.facts;
  // Nothing was decided when the server could not be reached or failed: that is no "no".
  const isRule = status >= 400 && status < 500;
  return (
    <section className="refusal" role="alert">
      <StateShape state="stop" />
      <div className="stack tight">
        <p>
          <strong>{isRule ? 'No, because: ' : `${title}. `}</strong>
          {isRule ? detail || title : detail}
        </p>
        {namesIn(details).map(([key, names]) => (
          <p key={key} className="small">
            {names.join(', ')}
          </p>
        ))}
        {children}
        <p className="next">
          <span className="soft">What to do next: </span>
          {next}
        </p>
      </div>
    </section>
  );
}
