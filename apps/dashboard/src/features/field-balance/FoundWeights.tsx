import { Button } from '../../ui/Button.tsx';
import { RadioList } from '../../ui/Checkbox.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { Select } from '../../ui/Select.tsx';

interface Found {
  readonly place: string;
  readonly mass: string;
  readonly stays: boolean;
}

const fates = [
  { value: 'stays', text: 'Stays, and counts in the limits' },
  { value: 'off', text: 'Taken off before the baseline' },
] as const;

/** Dynamic weights found on the propeller, each with its place and whether it stays. */
export function FoundWeights(props: {
  places: readonly { readonly name: string }[];
  found: readonly Found[];
  onChange: (found: readonly Found[]) => void;
}) {
  const { places, found, onChange } = props;
  const change = (at: number, changes: Partial<Found>) =>
    onChange(found.map((one, index) => (index === at ? { ...one, ...changes } : one)));
  const add = () => onChange([...found, { place: places[0]?.name ?? '', mass: '', stays: true }]);
  return (
    <div className="stack tight">
      {found.length === 0 ? <p className="soft small">No dynamic weights found on the propeller.</p> : null}
      {found.map(({ place, mass, stays }, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name of their own
        <FieldGroup key={at} title={`Weight found, ${at + 1}`}>
          <Select
            name={`found/${at}/place`}
            label="Place"
            value={place}
            onChange={(value) => change(at, { place: value })}
            choices={places.map(({ name }) => ({ value: name, text: name }))}
            isRequired
          />
          <DecimalField
            name={`found/${at}/mass`}
            label="Mass"
            unit="g"
            decimals={2}
            value={mass}
            onChange={(value) => change(at, { mass: value })}
            isRequired
          />
          <RadioList
            label="What becomes of it"
            value={stays ? 'stays' : 'off'}
            onChange={(value) => change(at, { stays: value === 'stays' })}
            choices={fates}
          />
          <Button weight="quiet" onPress={() => onChange(found.filter((_, index) => index !== at))}>
            Not this one
          </Button>
        </FieldGroup>
      ))}
      <div>
        <Button weight="quiet" onPress={add}>
          Add a weight that was found
        </Button>
      </div>
    </div>
  );
}
