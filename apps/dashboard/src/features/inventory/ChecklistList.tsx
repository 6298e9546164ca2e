import type { ReactNode } from 'react';
import { InstantText } from '../../format/values.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import type { Checklist } from './checklists.ts';
import { classWords } from './stock-words.ts';

/** What is looked at when parts of a class come in, class by class. */
export function ChecklistList(props: {
  classes: readonly Checklist['partClass'][];
  rows: readonly Checklist[];
  actions: (partClass: Checklist['partClass'], checklist: Checklist | undefined) => ReactNode;
}) {
  return props.classes.map((partClass) => {
    const checklist = props.rows.find((row) => row.partClass === partClass);
    return (
      <section key={partClass} className="sheet stack" aria-label={`Receiving ${classWords[partClass]}`}>
        <div className="row between">
          <h2>{classWords[partClass]}</h2>
          {props.actions(partClass, checklist)}
        </div>
        {checklist ? (
          <>
            <ol className="stack tight">
              {checklist.items.map((item) => (
                <li key={item}>{item}</li>
              ))}
            </ol>
            <p className="soft small">
              Revision {checklist.revision}, by {checklist.person.displayName}, <InstantText instant={checklist.at} />
            </p>
          </>
        ) : (
          <EmptyState title="Nothing is asked on receipt">
            Quantity, paper and damage are asked of every box; a checklist asks more.
          </EmptyState>
        )}
      </section>
    );
  });
}
