import { useEffect, useLayoutEffect, useRef, useState } from 'react';
import type { ProblemError } from '../api/problem.ts';
import { fieldName } from './field-errors.ts';
import { StateShape } from './StateMark.tsx';

/** The entry an error is about, when the form has it; an error inside a list belongs to the list's entry. */
function fieldAt(form: HTMLElement | null, pointer: string): HTMLElement | null {
  for (let name = fieldName(pointer); name !== ''; name = name.replace(/\/?[^/]*$/, '')) {
    const field = form?.querySelector<HTMLElement>(`[name="${CSS.escape(name)}"]`);
    if (field) return field;
  }
  return null;
}

/** What the person reads above an entry. */
function labelOf(field: HTMLElement | null): string | undefined {
  return field?.closest('.field')?.querySelector('.field-head > :first-child')?.textContent ?? undefined;
}

export interface FormProblemProps {
  problem: ProblemError | null;
  /** Name of the entry to type into again, where that is plain; otherwise the problem itself takes the focus, so it is read at once. */
  retryField?: string;
}

/** Why it was not done, where it is wrong, and what to do next. */
export function FormProblem({ problem, retryField }: FormProblemProps) {
  const box = useRef<HTMLDivElement>(null);
  const [labels, setLabels] = useState<readonly (string | undefined)[]>([]);
  const form = () => box.current?.closest('form') ?? null;
  useLayoutEffect(() => {
    const inForm = box.current?.closest('form') ?? null;
    setLabels(problem?.facts.errors.map(({ pointer }) => labelOf(fieldAt(inForm, pointer))) ?? []);
  }, [problem]);
  useEffect(() => {
    if (!problem) return;
    const again = retryField
      ? box.current?.closest('form')?.querySelector<HTMLElement>(`[name="${retryField}"]`)
      : null;
    (again ?? box.current)?.focus();
  }, [problem, retryField]);
  if (!problem) return null;
  const { title, detail, next, errors } = problem.facts;
  return (
    <div ref={box} className="form-problem" role="alert" tabIndex={-1}>
      <StateShape state="stop" />
      <div className="stack tight">
        <strong>{title}</strong>
        {detail && detail !== title ? <span>{detail}</span> : null}
        {errors.length > 0 ? (
          <ul>
            {errors.map(({ pointer, detail: why }, place) => (
              <li key={pointer + why}>
                <button type="button" className="link" onClick={() => fieldAt(form(), pointer)?.focus()}>
                  {labels[place] ? `${labels[place]}: ${why}` : why}
                </button>
              </li>
            ))}
          </ul>
        ) : null}
        <span>
          <span className="soft">What to do next: </span>
          {next}
        </span>
      </div>
    </div>
  );
}
