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

interface Words {
  /** The field of the command that takes the time. */
  readonly field: string;
  readonly tick: string;
  readonly at: string;
  readonly why: string;
}
const ofWork: Words = {
  ...{ field: 'performedAt', tick: 'The work was done earlier', at: 'Done on', why: 'Why it is signed later' },
};

export function LateEntry(props: { value: Lateness; onChange: (value: Lateness) => void; words?: Words }) {
  const { value, onChange, words = ofWork } = props;
  return (
    <div className="stack tight">
      <Checkbox isSelected={value.isLate} onChange={(isLate) => onChange({ ...value, isLate })}>
        {words.tick}
      </Checkbox>
      {value.isLate ? (
        <div className="row">
          <TextField
            name={words.field}
            label={words.at}
            type={'datetime-local' as 'text'}
            value={value.at}
            onChange={(at) => onChange({ ...value, at })}
            isRequired
          />
          <TextField
            name="lateReason"
            label={words.why}
            value={value.reason}
            onChange={(reason) => onChange({ ...value, reason })}
          />
        </div>
      ) : null}
    </div>
  );
}
