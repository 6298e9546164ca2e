import type { FormField } from '@hubwright/contracts/manuals/revision';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { TextField } from '../../ui/TextField.tsx';
import type { Filled } from './process-form.ts';

/** The process form of a step: bath, lot, programme. Nothing in it is filled in beforehand. */
export function ProcessForm(props: {
  fields: readonly FormField[];
  filled: Filled;
  onChange: (filled: Filled) => void;
}) {
  if (props.fields.length === 0) return null;
  return (
    <FieldGroup title="Process form">
      {props.fields.map(({ name, unit }, index) => (
        <TextField
          key={name}
          name={`form/${index}/value`}
          label={name.charAt(0).toUpperCase() + name.slice(1)}
          {...(unit ? { unit, inputMode: 'decimal' as const } : {})}
          value={props.filled[name] ?? ''}
          onChange={(value) => props.onChange({ ...props.filled, [name]: value })}
          isRequired
        />
      ))}
    </FieldGroup>
  );
}
