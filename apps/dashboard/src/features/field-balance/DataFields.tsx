import { DecimalField } from '../../ui/DecimalField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import type { DataDraft } from './data-draft.ts';
import { SecondPlane } from './SecondPlane.tsx';

const numbers = [
  ['radius', 'Radius of the places', 3],
  ['mostPerPlace', 'Most in one place, g', 2],
  ['mostInAll', 'Most in all, g', 2],
  ['mostPieces', 'Most pieces in one place', 0],
  ['mostPlaces', 'Most places used', 0],
  ['scatter', 'Readings repeat within', 3],
  ['mostWind', 'Most wind, kt', 1],
] as const;
const ways = [
  { value: 'clockwise', text: 'Clockwise' },
  { value: 'counterclockwise', text: 'Counterclockwise' },
] as const;
const radiusUnits = [
  { value: 'in', text: 'in' },
  { value: 'mm', text: 'mm' },
] as const;

/** What an approved document says of places and limits, box by box. */
export function DataFields({ draft, set }: { draft: DataDraft; set: (changes: Partial<DataDraft>) => void }) {
  return (
    <>
      <TextField
        name="source"
        label="Document with its revision"
        value={draft.source}
        onChange={(source) => set({ source })}
        isRequired
      />
      <FieldGroup title="Limits">
        {numbers.map(([name, label, decimals]) => (
          <DecimalField
            key={name}
            name={name}
            label={label}
            decimals={decimals}
            value={draft[name]}
            onChange={(text) => set({ [name]: text })}
            isRequired
          />
        ))}
        <Select
          name="radiusUnit"
          label="Unit of the radius"
          value={draft.radiusUnit}
          onChange={(radiusUnit) => set({ radiusUnit })}
          choices={radiusUnits}
          isRequired
        />
        <Select
          name="counting"
          label="Angles count"
          hint="From blade 1, seen from the front"
          value={draft.counting}
          onChange={(counting) => set({ counting })}
          choices={ways}
          isRequired
        />
        <TextField
          name="unit"
          label="Unit of vibration"
          hint="As the document and the instrument have it, such as ips peak"
          value={draft.unit}
          onChange={(unit) => set({ unit })}
          isRequired
        />
      </FieldGroup>
      <TextField
        name="places"
        label="Places"
        hint="A line each: name, angle in degrees"
        lines={6}
        value={draft.places}
        onChange={(places) => set({ places })}
        isRequired
      />
      <TextField
        name="ranges"
        label="Speed ranges"
        hint="A line each: from rpm, to rpm, limit, target"
        lines={3}
        value={draft.ranges}
        onChange={(ranges) => set({ ranges })}
        isRequired
      />
      <SecondPlane draft={draft} set={set} />
    </>
  );
}
