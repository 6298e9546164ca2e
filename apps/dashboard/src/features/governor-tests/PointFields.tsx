import { benchUnit, pointKinds, pointKindWords } from '@hubwright/contracts/governor-tests/program';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { unitWord } from './governor.ts';
import type { PointDraft } from './program-draft.ts';

const kinds = pointKinds.map((value) => ({ value, text: pointKindWords[value] }));
const units = benchUnit.options.map((value) => ({ value, text: unitWord(value) }));
const methods = [
  { value: 'absolute', text: 'as it is read' },
  { value: 'rounding', text: 'rounded to these places first' },
] as const;

/** One point of a program: what is read, in what unit, between which limits. */
export function PointFields(props: { at: number; draft: PointDraft; onChange: (draft: PointDraft) => void }) {
  const { draft } = props;
  const set =
    <K extends keyof PointDraft>(key: K) =>
    (value: PointDraft[K]) =>
      props.onChange({ ...draft, [key]: value });
  const at = `points/${props.at}`;
  return (
    <FieldGroup title={`Point ${props.at + 1}`}>
      <TextField name={`${at}/name`} label="Point" value={draft.name} onChange={set('name')} isRequired />
      <Select name={`${at}/kind`} label="About" value={draft.kind} onChange={set('kind')} choices={kinds} isRequired />
      <Select name={`${at}/unit`} label="Unit" value={draft.unit} onChange={set('unit')} choices={units} isRequired />
      <DecimalField name={`${at}/low`} label="At least" value={draft.low} onChange={set('low')} />
      <DecimalField name={`${at}/high`} label="At most" value={draft.high} onChange={set('high')} />
      <DecimalField
        name={`${at}/atRpm`}
        label="At governor speed"
        unit="rpm"
        value={draft.atRpm}
        onChange={set('atRpm')}
      />
      <DecimalField
        name={`${at}/decimals`}
        label="Places after the point"
        hint="Empty: as many as the limits have"
        decimals={0}
        value={draft.decimals}
        onChange={set('decimals')}
      />
      <Select
        name={`${at}/method`}
        label="Compared"
        value={draft.method}
        onChange={set('method')}
        choices={methods}
        isRequired
      />
      <TextField name={`${at}/channel`} label="Channel of the bench" value={draft.channel} onChange={set('channel')} />
      <TextField
        name={`${at}/instruction`}
        label="What to do at this point"
        lines={2}
        value={draft.instruction}
        onChange={set('instruction')}
      />
    </FieldGroup>
  );
}
