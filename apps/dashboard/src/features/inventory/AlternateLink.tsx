import { Checkbox } from '../../ui/Checkbox.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { Select } from '../../ui/Select.tsx';
import { type LinkDraft, sinceWords } from './alternate-words.ts';

const choices = Object.entries(sinceWords).map(([value, text]) => ({ value: value as keyof typeof sinceWords, text }));

/** Since when a part may stand in, and whether the other way round too. */
export function AlternateLink(props: {
  part: string;
  /** Where the link is in the list: what is refused about it is said here. */
  place: number;
  link: LinkDraft;
  onChange: (link: LinkDraft) => void;
}) {
  const { part, place, link, onChange } = props;
  const set = (change: Partial<LinkDraft>) => onChange({ ...link, ...change });
  return (
    <FieldGroup title={`${link.number} for ${part}`}>
      <Select
        name={`alternates/${place}/effectivity`}
        label="Since when"
        placeholder="Choose since when"
        value={link.effectivity}
        onChange={(effectivity) => effectivity && set({ effectivity })}
        choices={choices}
        isRequired
      />
      {link.effectivity === 'from-date' ? (
        <DateField
          name={`alternates/${place}/from`}
          label="First build day"
          value={link.from}
          onChange={(from) => set({ from })}
          isRequired
        />
      ) : null}
      <Checkbox isSelected={link.twoWay} onChange={(twoWay) => set({ twoWay })}>
        {part} may stand in for {link.number} as well
      </Checkbox>
      <Checkbox isSelected={link.supersedes} onChange={(supersedes) => set({ supersedes })}>
        {link.number} supersedes {part}
      </Checkbox>
    </FieldGroup>
  );
}
