import { StateMark } from '../../../ui/StateMark.tsx';
import type { SheetInHand } from './use-sheet.ts';

/** A step's sheet, judged while it is filled in. */
export function SheetFields({ sheet }: { sheet: SheetInHand | undefined }) {
  if (!sheet) return null;
  const { form, about, draft, setDraft, reasons } = sheet;
  return (
    <div className="stack">
      <form.Fields about={about} draft={draft} onChange={setDraft} />
      <p className="state-sentence" aria-live="polite">
        {reasons ? (
          <StateMark
            state={reasons.length === 0 ? 'passed' : 'stop'}
            word={reasons.length === 0 ? 'good as entered' : reasons.join(' ')}
          />
        ) : null}
      </p>
    </div>
  );
}
