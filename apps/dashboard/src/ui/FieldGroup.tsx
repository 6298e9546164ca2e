import type { ReactNode } from 'react';

/** Fields that belong together, under one heading, in as many columns as fit. */
export function FieldGroup({ title, note, children }: { title: string; note?: string; children: ReactNode }) {
  return (
    <fieldset className="field-group">
      <legend>{title}</legend>
      {note ? <p className="soft small">{note}</p> : null}
      <div className="field-grid">{children}</div>
    </fieldset>
  );
}
