import { isGood } from '@hubwright/rules/fitness';
import { Checkbox, RadioList } from '../../ui/Checkbox.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { type Check, dueWords, limitWords } from './equipment.ts';

const answers = [
  { value: 'yes', text: 'Yes' },
  { value: 'no', text: 'No' },
] as const;

/** One result: typed as read or answered, said at once when it is out. */
export function CheckField(props: {
  isRequired: boolean;
  check: Check;
  index: number;
  value: string;
  onChange: (value: string) => void;
}) {
  const { check, index, value, onChange, isRequired } = props;
  const name = `values/${index}/value`;
  const isOut = value !== '' && !isGood(value, check);
  return (
    <div>
      {check.confirm ? (
        <RadioList
          name={name}
          label={check.name}
          hint={`${check.source}; ${dueWords(check)}`}
          value={value === '' ? null : (value as 'yes' | 'no')}
          onChange={onChange}
          choices={answers}
          isRequired={isRequired}
        />
      ) : (
        <DecimalField
          name={name}
          label={check.name}
          hint={`${limitWords(check)}; ${check.source}; ${dueWords(check)}`}
          unit={check.unit}
          isRequired={isRequired}
          value={value}
          onChange={onChange}
        />
      )}
      {isOut ? (
        <p className="small" aria-live="polite">
          <StateMark state="stop" word="out of its limits: nothing more is signed with it until a good one" />
        </p>
      ) : null}
    </div>
  );
}

/** When it was taken, if not just now. */
export function Later(props: {
  at: string | undefined;
  reason: string;
  onChange: (at: string | undefined, reason: string) => void;
}) {
  const { at, reason, onChange } = props;
  return (
    <div className="stack tight">
      <Checkbox isSelected={at !== undefined} onChange={(is) => onChange(is ? '' : undefined, reason)}>
        It was taken earlier
      </Checkbox>
      {at === undefined ? null : (
        <div className="row">
          <TextField
            name="takenAt"
            label="Taken on"
            type={'datetime-local' as 'text'}
            value={at}
            onChange={(when) => onChange(when, reason)}
            isRequired
          />
          <TextField
            name="lateReason"
            label="Why it is entered later"
            value={reason}
            onChange={(why) => onChange(at, why)}
          />
        </div>
      )}
    </div>
  );
}
