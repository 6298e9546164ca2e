import { Button } from '../../ui/Button.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import type { CheckDraft } from './check-draft.ts';
import { emptyCheck } from './check-draft.ts';

const dues = [
  { value: 'day-of-use', text: 'Each day, before the first part' },
  { value: 'hours', text: 'Every so many hours' },
  { value: 'days', text: 'Every so many days' },
] as const;

function CheckLine(props: {
  draft: CheckDraft;
  index: number;
  onChange: (draft: CheckDraft) => void;
  onRemove: () => void;
}) {
  const { draft, index, onChange } = props;
  const at = `checks/${index}`;
  const set = (changed: Partial<CheckDraft>) => onChange({ ...draft, ...changed });
  return (
    <FieldGroup title={draft.name || `Check ${index + 1}`}>
      <TextField
        name={`${at}/name`}
        label="What is checked"
        value={draft.name}
        onChange={(name) => set({ name })}
        isRequired
      />
      <Select
        name={`${at}/due`}
        label="How often"
        value={draft.by}
        onChange={(by) => set({ by })}
        choices={dues}
        isRequired
      />
      {draft.by === 'day-of-use' ? null : (
        <DecimalField
          name={`${at}/due/every`}
          label={draft.by === 'hours' ? 'Hours it holds' : 'Days it holds'}
          decimals={0}
          value={draft.every}
          onChange={(every) => set({ every })}
          isRequired
        />
      )}
      <TextField
        name={`${at}/source`}
        label="Where the limit is from"
        hint="Process specification or standard; “common practice, no source” where there is none"
        value={draft.source}
        onChange={(source) => set({ source })}
        isRequired
      />
      <Checkbox isSelected={draft.confirm} onChange={(confirm) => set({ confirm })}>
        Answered by yes or no
      </Checkbox>
      {draft.confirm ? null : (
        <>
          <DecimalField name={`${at}/low`} label="Low limit" value={draft.low} onChange={(low) => set({ low })} />
          <DecimalField name={`${at}/high`} label="High limit" value={draft.high} onChange={(high) => set({ high })} />
          <TextField name={`${at}/unit`} label="Unit" size={10} value={draft.unit} onChange={(unit) => set({ unit })} />
        </>
      )}
      <Button weight="quiet" onPress={props.onRemove}>
        Leave this check out
      </Button>
    </FieldGroup>
  );
}

/** What is checked on a tank or test system, line by line. */
export function CheckLines({
  drafts,
  onChange,
}: {
  drafts: readonly CheckDraft[];
  onChange: (drafts: CheckDraft[]) => void;
}) {
  return (
    <div className="stack">
      {drafts.map((draft, index) => (
        <CheckLine
          key={draft.key}
          draft={draft}
          index={index}
          onChange={(changed) => onChange(drafts.map((one) => (one.key === changed.key ? changed : one)))}
          onRemove={() => onChange(drafts.filter(({ key }) => key !== draft.key))}
        />
      ))}
      <div>
        <Button onPress={() => onChange([...drafts, emptyCheck(Math.max(0, ...drafts.map(({ key }) => key)) + 1)])}>
          One more check
        </Button>
      </div>
    </div>
  );
}
