import type { ReactNode } from 'react';

/** What belongs together on a sheet under one heading, one below the other; entries side by side go into a `field-grid`. */
export function SheetGroup({ title, note, children }: { title: string; note?: string; children: ReactNode }) {
  return (
    <fieldset className="field-group">
      <legend>{title}</legend>
      <div className="stack tight">
        {note ? <p className="soft small">{note}</p> : null}
        {children}
      </div>
    </fieldset>
  );
}
