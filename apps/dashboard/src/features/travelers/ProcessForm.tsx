import { confirmed, type FormField } from '@hubwright/contracts/manuals/revision';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { TextField } from '../../ui/TextField.tsx';
import type { Filled } from './process-form.ts';

type Props = { fields: readonly FormField[]; filled: Filled; onChange: (filled: Filled) => void };

const capital = (name: string) => name.charAt(0).toUpperCase() + name.slice(1);

/** One tick for each thing to confirm; there is none for all of them. */
function Confirmations({ fields, filled, onChange }: Props) {
  if (fields.length === 0) return null;
  return (
    <FieldGroup title="Confirm each, as you see it">
      {fields.map(({ name }) => (
        <Checkbox
          key={name}
          isSelected={filled[name] === confirmed}
          onChange={(is) => onChange({ ...filled, [name]: is ? confirmed : '' })}
        >
          {capital(name)}
        </Checkbox>
      ))}
    </FieldGroup>
  );
}

/** The process form of a step: bath, lot, programme. Nothing in it is filled in beforehand. */
export function ProcessForm({ fields, filled, onChange }: Props) {
  const written = fields.filter(({ confirm }) => !confirm);
  return (
    <>
      {written.length > 0 ? (
        <FieldGroup title="Process form">
          {written.map(({ name, unit }) => (
            <TextField
              key={name}
              name={`form/${fields.findIndex((one) => one.name === name)}/value`}
              label={capital(name)}
              {...(unit ? { unit, inputMode: 'decimal' as const } : {})}
              value={filled[name] ?? ''}
              onChange={(value) => onChange({ ...filled, [name]: value })}
              isRequired
            />
          ))}
        </FieldGroup>
      ) : null}
      <Confirmations fields={fields.filter(({ confirm }) => confirm)} filled={filled} onChange={onChange} />
    </>
  );
}
