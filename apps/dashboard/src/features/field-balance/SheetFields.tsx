import { processOperations } from '@hubwright/contracts/processes/operations';
import { useQuery } from '@tanstack/react-query';
import { queryFor } from '../../api/query.ts';
import { formatDate } from '../../format/dates.ts';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { axes } from './SecondSensor.tsx';
import { type Point, points, type Sheet } from './sheet-draft.ts';

const ways = [
  { value: 'clockwise', text: 'Clockwise' },
  { value: 'counterclockwise', text: 'Counterclockwise' },
] as const;
/** Where sensor and phase reference sit, and with which instrument. */
export function SensorFields({ sheet }: { sheet: Sheet }) {
  const { words, setWords } = sheet;
  const set = (name: keyof typeof words) => (text: string) => setWords({ ...words, [name]: text });
  const input = { kind: 'vibration-analyser', limit: 50 } as const;
  const instruments = useQuery(queryFor(processOperations.listInstruments, input)).data?.rows ?? [];
  return (
    <FieldGroup title="Sensor and phase">
      <TextField
        name="sensorPlace"
        label="Sensor sits"
        value={words.sensorPlace}
        onChange={set('sensorPlace')}
        isRequired
      />
      <Select
        name="sensorAxis"
        label="Sensor axis"
        value={sheet.sensorAxis}
        onChange={sheet.setAxis}
        choices={axes}
        isRequired
      />
      <TextField
        name="phaseReference"
        label="Phase reference"
        hint="Which tape on which blade"
        value={words.phaseReference}
        onChange={set('phaseReference')}
        isRequired
      />
      <Select
        name="counting"
        label="Instrument counts phase"
        hint="As seen from the front"
        value={sheet.counting}
        onChange={sheet.setCounting}
        choices={ways}
        isRequired
      />
      <Select
        name="instrumentId"
        label="Instrument"
        value={sheet.instrumentId}
        onChange={sheet.setInstrument}
        choices={instruments
          .filter(({ inService }) => inService)
          .map(({ id, tag, title, inCalibration, calibrationDueOn }) => ({
            value: id,
            text: `${tag} ${title}, ${inCalibration ? 'calibrated until' : 'OVERDUE since'} ${formatDate(calibrationDueOn)}`,
          }))}
        isRequired
      />
    </FieldGroup>
  );
}

/** Procedure, weather and the points looked at one by one. */
export function SafetyFields({ sheet, mostWind }: { sheet: Sheet; mostWind: string | undefined }) {
  const { words, setWords, checked, setChecked } = sheet;
  const set = (name: keyof typeof words) => (text: string) => setWords({ ...words, [name]: text });
  return (
    <>
      <FieldGroup title="Procedure and weather">
        <TextField
          name="procedure"
          label="Off-station procedure"
          value={words.procedure}
          onChange={set('procedure')}
          isRequired
        />
        <DecimalField
          name="wind"
          label="Wind"
          hint={mostWind ? `At most ${mostWind} kt` : ''}
          unit="kt"
          decimals={1}
          value={words.wind}
          onChange={set('wind')}
          isRequired
        />
        <TextField name="weather" label="Weather" value={words.weather} onChange={set('weather')} isRequired />
      </FieldGroup>
      <fieldset className="field-group">
        <legend>Looked at, one by one</legend>
        {(Object.keys(points) as Point[]).map((point) => (
          <Checkbox key={point} isSelected={checked[point]} onChange={(is) => setChecked({ ...checked, [point]: is })}>
            {points[point]}
          </Checkbox>
        ))}
      </fieldset>
    </>
  );
}
