import { DecimalField } from '../../ui/DecimalField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';

/** What the instrument shows at one speed, as it is typed. Every box starts empty. */
export interface Reading {
  readonly rpm: string;
  readonly amplitude: string;
  readonly phase: string;
}

export function ReadingFields(props: {
  at: number;
  /** The speed of the baseline, which this one is read near. */
  near: number | undefined;
  unit: string;
  reading: Reading;
  onChange: (reading: Reading) => void;
}) {
  const { at, near, reading } = props;
  const set = (name: keyof Reading) => (text: string) => props.onChange({ ...reading, [name]: text });
  return (
    <FieldGroup title={near === undefined ? `Speed ${at + 1}` : `Speed ${at + 1}, near ${near} rpm`}>
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
}
