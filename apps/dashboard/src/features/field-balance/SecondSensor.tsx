import { Checkbox } from '../../ui/Checkbox.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import type { Sheet } from './sheet-draft.ts';

export const axes = [
  { value: 'vertical', text: 'Vertical' },
  { value: 'horizontal', text: 'Horizontal' },
] as const;

/** Where a second sensor sits, once somebody says there is one. */
export function SecondSensor({ sheet, hasTwoPlanes }: { sheet: Sheet; hasTwoPlanes: boolean }) {
  const { second, setSecond } = sheet;
  return (
    <>
      <Checkbox
        isSelected={second !== null}
        onChange={(is) => setSecond(is ? { sensorPlace: '', sensorAxis: null } : null)}
      >
        {hasTwoPlanes ? 'A second sensor: both planes are balanced' : 'A second sensor'}
      </Checkbox>
      {hasTwoPlanes && !second ? (
        <p className="soft small">With one sensor only the first plane of this model is balanced.</p>
      ) : null}
      {second ? (
        <FieldGroup title="Second sensor">
          <TextField
            name="secondSensor/sensorPlace"
            label="Second sensor sits"
            value={second.sensorPlace}
            onChange={(sensorPlace) => setSecond({ ...second, sensorPlace })}
            isRequired
          />
          <Select
            name="secondSensor/sensorAxis"
            label="Axis of the second sensor"
            value={second.sensorAxis}
            onChange={(sensorAxis) => setSecond({ ...second, sensorAxis })}
            choices={axes}
            isRequired
          />
        </FieldGroup>
      ) : null}
    </>
  );
}
