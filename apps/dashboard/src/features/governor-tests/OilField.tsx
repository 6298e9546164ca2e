import { DecimalField } from '../../ui/DecimalField.tsx';
import { Select } from '../../ui/Select.tsx';
import { type Run, unitWord } from './governor.ts';
import type { OilRead } from './oil.ts';

const units = [
  { value: 'degF', text: '°F' },
  { value: 'degC', text: '°C' },
] as const;

/** The oil as it is read now, with the band it must be in. */
export function OilField({ run, oil, onOil }: { run: Run; oil: OilRead; onOil: (oil: OilRead) => void }) {
  const { low, high, unit } = run.program.content.oil;
  return (
    <div className="row">
      <DecimalField
        name="oilTemperature"
        label="Oil temperature"
        hint={`${low} to ${high} ${unitWord(unit)}`}
        decimals={1}
        value={oil.value}
        onChange={(value) => onOil({ ...oil, value })}
        isRequired
      />
      <Select
        name="oilUnit"
        label="Unit of the oil"
        value={oil.unit}
        onChange={(chosen) => onOil({ ...oil, unit: chosen })}
        choices={units}
        isRequired
      />
    </div>
  );
}
