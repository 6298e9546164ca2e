import { DecimalField } from '../../ui/DecimalField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';

/** What the instrument shows at one speed, as it is typed. Every box starts empty. */
export interface Reading {
  readonly rpm: string;
  readonly amplitude: string;
  readonly phase: string;
  /** The second sensor, where there is one. */
  readonly amplitude2: string;
  readonly phase2: string;
}

export function ReadingFields(props: {
  at: number;
  /** The speed of the baseline, which this one is read near. */
  near: number | undefined;
  unit: string;
  /** Where both sensors sit, where there are two. */
  sensors: readonly [string, string] | undefined;
  reading: Reading;
  onChange: (reading: Reading) => void;
}) {
  const { at, near, reading, sensors } = props;
  const set = (name: keyof Reading) => (text: string) => props.onChange({ ...reading, [name]: text });
  const title = near === undefined ? `Speed ${at + 1}` : `Speed ${at + 1}, near ${near} rpm`;
  const first = (
    <FieldGroup title={title} {...(sensors ? { note: `First sensor: ${sensors[0]}` } : {})}>
      <DecimalField
        name={`readings/${at}/rpm`}
        label="Speed"
        unit="rpm"
        decimals={0}
        value={reading.rpm}
        onChange={set('rpm')}
        isRequired
      />
      <DecimalField
        name={`readings/${at}/amplitude`}
        label="Vibration"
        unit={props.unit}
        decimals={3}
        value={reading.amplitude}
        onChange={set('amplitude')}
        isRequired
      />
      <DecimalField
        name={`readings/${at}/phase`}
        label="Phase"
        unit="°"
        decimals={1}
        value={reading.phase}
        onChange={set('phase')}
        isRequired
      />
    </FieldGroup>
  );
  if (!sensors) return first;
  return (
    <>
      {first}
      <FieldGroup title={`${title}, second sensor`} note={sensors[1]}>
        <DecimalField
          name={`readings/${at}/second/amplitude`}
          label="Second sensor, vibration"
          unit={props.unit}
          decimals={3}
          value={reading.amplitude2}
          onChange={set('amplitude2')}
          isRequired
        />
        <DecimalField
          name={`readings/${at}/second/phase`}
          label="Second sensor, phase"
          unit="°"
          decimals={1}
          value={reading.phase2}
          onChange={set('phase2')}
          isRequired
        />
      </FieldGroup>
    </>
  );
}
