import { Checkbox } from '../../ui/Checkbox.tsx';
import { TextField } from '../../ui/TextField.tsx';

/** When the work was done, if not just now, and why it is written down later. */
export interface Lateness {
  readonly isLate: boolean;
  /** Date and time of the device, as the entry gives it. */
  readonly at: string;
  readonly reason: string;
}
export const justNow: Lateness = { isLate: false, at: '', reason: '' };

/** The two fields of the command, left out when the work was done just now. */
export function latenessInput({ isLate, at, reason }: Lateness): { performedAt?: string; lateReason?: string } {
  if (!isLate || at === '' || Number.isNaN(Date.parse(at))) return {};
  return { performedAt: new Date(at).toISOString(), ...(reason.trim() === '' ? {} : { lateReason: reason.trim() }) };
}

export function LateEntry({ value, onChange }: { value: Lateness; onChange: (value: Lateness) => void }) {
  return (
    <div className="stack tight">
      <Checkbox isSelected={value.isLate} onChange={(isLate) => onChange({ ...value, isLate })}>
        The work was done earlier
      </Checkbox>
      {value.isLate ? (
        <div className="row">
          <TextField
            name="performedAt"
            label="Done on"
            type={'datetime-local' as 'text'}
            value={value.at}
            onChange={(at) => onChange({ ...value, at })}
            isRequired
          />
          <TextField
            name="lateReason"
            label="Why it is signed later"
            value={value.reason}
            onChange={(reason) => onChange({ ...value, reason })}
          />
        </div>
      ) : null}
    </div>
  );
}
