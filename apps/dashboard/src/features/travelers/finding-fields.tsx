import { areas, type Damage, damages } from '@hubwright/contracts/findings/areas';
import { type FindingSpot, spotText } from '@hubwright/contracts/findings/spot';
import { type CorrosionClass, corrosionClasses, type PartClass } from '@hubwright/contracts/manuals/words';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { SpotFields } from './SpotFields.tsx';

/** What was found, as it is being written down. */
export interface FindingDraft {
  readonly area: string | null;
  readonly damage: Damage | null;
  readonly place: string;
  readonly description: string;
  readonly spot: FindingSpot | null;
  readonly corrosionClass: CorrosionClass | null;
}
export const noFinding: FindingDraft = {
  ...{ area: null, damage: null, place: '', description: '' },
  ...{ spot: null, corrosionClass: null },
};

/** The draft as the command takes it; the server points at what is missing. */
export function findingInput(draft: FindingDraft) {
  return {
    area: draft.area ?? '',
    damage: draft.damage as Damage,
    place: draft.place,
    description: draft.description,
    ...(draft.spot ? { spot: draft.spot } : {}),
    ...(draft.damage === 'corroded' && draft.corrosionClass ? { corrosionClass: draft.corrosionClass } : {}),
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
        choices={damages
          .filter((value) => value !== 'mate-rejected')
          .map((value) => ({ value, text: value.replaceAll('-', ' ') }))}
        isRequired
      />
      {draft.damage === 'corroded' ? (
        <Select
          name="corrosionClass"
          label="How heavy, by the classes of the manual"
          value={draft.corrosionClass}
          onChange={(value) => onChange({ ...draft, corrosionClass: value })}
          choices={corrosionClasses.map((value) => ({ value, text: value }))}
        />
      ) : null}
      <SpotFields
        partClass={props.partClass}
        spot={draft.spot}
        onChange={(spot) => onChange({ ...draft, spot, place: spotText(spot) })}
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
