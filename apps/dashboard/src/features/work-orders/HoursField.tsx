import { Checkbox } from '../../ui/Checkbox.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import type { HoursDraft } from './arrival-draft.ts';

/** Hours with one decimal, or whole cycles, or unknown: said by a tick, never by leaving it empty. */
export function HoursField(props: {
  name: string;
  label: string;
  value: HoursDraft;
  counts?: 'cycles';
  onChange: (value: HoursDraft) => void;
}) {
  const { value, onChange } = props;
  return (
    <DecimalField
      // Under another name while unknown: a complaint about what was typed no longer holds.
      name={value.isUnknown ? `${props.name}/unknown` : props.name}
      label={props.label}
      {...(props.counts ? { decimals: 0 } : { unit: 'h', decimals: 1 })}
      size={props.counts ? 6 : 8}
      value={value.isUnknown ? '' : value.text}
      onChange={(text) => onChange({ text, isUnknown: false })}
      isRequired
      after={
        <Checkbox
          aria-label={`${props.label}: unknown`}
          isSelected={value.isUnknown}
          onChange={(isUnknown) => onChange({ text: '', isUnknown })}
        >
          unknown
        </Checkbox>
      }
    />
  );
}
