import { useEffect, useRef } from 'react';
import type { ProblemError } from '../api/problem.ts';
import { fieldName } from './field-errors.ts';
import { StateShape } from './StateMark.tsx';

/** Puts the focus on the field an error is about, when the form has it. */
function focusField(form: HTMLElement | null, name: string) {
  const field = form?.querySelector<HTMLElement>(`[name="${CSS.escape(name)}"]`);
  field?.focus();
}

/** Why it was not done, where it is wrong, and what to do next. Takes the focus when it appears, so it is read at once. */
export function FormProblem({ problem }: { problem: ProblemError | null }) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (problem) box.current?.focus();
  }, [problem]);
  if (!problem) return null;
  const { title, detail, next, errors } = problem.facts;
  return (
    <div ref={box} className="form-problem" role="alert" tabIndex={-1}>
      <StateShape state="stop" />
      <div className="stack tight">
        <strong>{title}</strong>
        {detail ? <span>{detail}</span> : null}
        {errors.length > 0 ? (
          <ul>
            {errors.map(({ pointer, detail: why }) => (
              <li key={pointer + why}>
                <button
                  type="button"
                  className="link"
                  onClick={() => focusField(box.current?.closest('form') ?? null, fieldName(pointer))}
                >
                  {why}
                </button>
              </li>
            ))}
          </ul>
        ) : null}
        <span className="next">
          <span className="soft">What to do next: </span>
          {next}
        </span>
      </div>
    </div>
  );
}
