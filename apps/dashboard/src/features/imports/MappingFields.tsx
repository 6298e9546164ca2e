import { importFields } from '@hubwright/contracts/imports/kinds';
import { Select } from '../../ui/Select.tsx';
import { type Mapping, type Preview, readFrom } from './preview.ts';

const none = 'none';

/** Which column of the file is read as what: guessed from the headings, and changed here. */
export function MappingFields(props: { preview: Preview; onChange: (mapping: Mapping) => void }) {
  const { kind, header, mapping } = props.preview;
  const columns = header.map((head, index) => ({ value: String(index), text: head || `Column ${index + 1}` }));
  const choices = [{ value: none, text: 'not in this file' }, ...columns];
  return (
    <div className="field-grid">
      {importFields[kind].map(({ field, title, says, required }) => (
        <Select
          key={field}
          name={field}
          label={title}
          hint={says}
          value={mapping[field] === undefined ? none : String(mapping[field])}
          onChange={(value) => props.onChange(readFrom(mapping, field, value === none ? undefined : Number(value)))}
          choices={choices}
          isRequired={required}
        />
      ))}
    </div>
  );
}
