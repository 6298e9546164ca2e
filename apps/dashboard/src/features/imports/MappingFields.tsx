import { Select } from '../../ui/Select.tsx';
import { type Mapping, type Preview, readFrom, tableFields } from './preview.ts';

const none = 'none';

/** How the column was found, where that is worth a second look. */
const found: Partial<Record<Preview['how'][string], string>> = {
  near: 'Found by a similar heading: look whether it is this one.',
  remembered: 'As it was chosen the last time.',
};

/** Which column of the file is read as what: guessed from the headings, and changed here. */
export function MappingFields(props: { preview: Preview; onChange: (mapping: Mapping) => void }) {
  const { kind, header, mapping, how } = props.preview;
  const columns = header.map((head, index) => ({ value: String(index), text: head || `Column ${index + 1}` }));
  const choices = [{ value: none, text: 'not in this file' }, ...columns];
  return (
    <div className="field-grid">
      {tableFields[kind].map(({ field, title, says, required }) => (
        <Select
          key={field}
          name={field}
          label={title}
          hint={[found[how[field] ?? 'named'], says].filter(Boolean).join(' ')}
          value={mapping[field] === undefined ? none : String(mapping[field])}
          onChange={(value) => props.onChange(readFrom(mapping, field, value === none ? undefined : Number(value)))}
          choices={choices}
          isRequired={required}
        />
      ))}
    </div>
  );
}
