import { areas, type Damage, damages } from '@hubwright/contracts/findings/areas';
import type { PartClass } from '@hubwright/contracts/manuals/words';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';

/** What was found, as it is being written down. */
export interface FindingDraft {
  readonly area: string | null;
  readonly damage: Damage | null;
  readonly place: string;
  readonly description: string;
}
export const noFinding: FindingDraft = { area: null, damage: null, place: '', description: '' };

/** The draft as the command takes it; the server points at what is missing. */
export function findingInput(draft: FindingDraft) {
  return {
    area: draft.area ?? '',
    damage: draft.damage as Damage,
    place: draft.place,
    description: draft.description,
  };
}

/** Where on this class of part, what kind of damage, exactly where, and in words. */
export function FindingFields(props: {
  partClass: PartClass;
  draft: FindingDraft;
  onChange: (draft: FindingDraft) => void;
}) {
  const { draft, onChange } = props;
  return (
    <>
      <Select
        name="area"
        label="Where on the part"
        value={draft.area}
        onChange={(area) => onChange({ ...draft, area })}
        choices={areas[props.partClass].map((area) => ({
          value: area.code,
          text: area.critical ? `${area.title} (critical)` : area.title,
        }))}
        isRequired
      />
      <Select
        name="damage"
        label="What is wrong"
        value={draft.damage}
        onChange={(damage) => onChange({ ...draft, damage })}
        choices={damages.map((value) => ({ value, text: value.replaceAll('-', ' ') }))}
        isRequired
      />
      <TextField
        name="place"
        label="Exactly where"
        hint="Blade station, position, side"
        value={draft.place}
        onChange={(place) => onChange({ ...draft, place })}
        isRequired
      />
      <TextField
        name="description"
        label="What you see"
        lines={3}
        value={draft.description}
        onChange={(description) => onChange({ ...draft, description })}
        isRequired
      />
    </>
  );
}
