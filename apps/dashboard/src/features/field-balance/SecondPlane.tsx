import { Checkbox } from '../../ui/Checkbox.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { type DataDraft, emptyPlane } from './data-draft.ts';

const limits = [
  ['radius', 'Radius, second plane', 3],
  ['mostPerPlace', 'Most in one of its places, g', 2],
  ['mostInAll', 'Most in the plane, g', 2],
  ['mostPieces', 'Most pieces in one of its places', 0],
  ['mostPlaces', 'Most of its places used', 0],
] as const;

/** A second plane of places with limits of its own, once somebody says the document has one. */
export function SecondPlane({ draft, set }: { draft: DataDraft; set: (changes: Partial<DataDraft>) => void }) {
  const { second } = draft;
  const change = (changes: Partial<NonNullable<DataDraft['second']>>) =>
    set({ second: { ...(second ?? emptyPlane), ...changes } });
  return (
    <>
      <Checkbox isSelected={second !== null} onChange={(is) => set({ second: is ? emptyPlane : null })}>
        The document has a second plane of places
      </Checkbox>
      {second ? (
        <>
          <FieldGroup title="Two planes" note="No place has the name of one in the other plane.">
            <TextField
              name="planeName"
              label="First plane is called"
              value={draft.planeName}
              onChange={(planeName) => set({ planeName })}
              isRequired
            />
            <TextField
              name="secondPlane/planeName"
              label="Second plane is called"
              value={second.planeName}
              onChange={(planeName) => change({ planeName })}
              isRequired
            />
            {limits.map(([name, label, decimals]) => (
              <DecimalField
                key={name}
                name={`secondPlane/${name}`}
                label={label}
                decimals={decimals}
                value={second[name]}
                onChange={(text) => change({ [name]: text })}
                isRequired
              />
            ))}
          </FieldGroup>
          <TextField
            name="secondPlane/places"
            label="Places of the second plane"
            hint="A line each: name, angle in degrees"
            lines={6}
            value={second.places}
            onChange={(places) => change({ places })}
            isRequired
          />
        </>
      ) : null}
    </>
  );
}
