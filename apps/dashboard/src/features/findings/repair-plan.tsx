import { type Process, processes } from '@hubwright/contracts/people/operations';
import { Button } from '../../ui/Button.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';

/** One step of a repair as it is being written down. */
export interface RepairDraft {
  readonly title: string;
  readonly process: Process | null;
  readonly minutes: string;
}
export const noStep: RepairDraft = { title: '', process: null, minutes: '' };

/** The steps as the command takes them. */
export function repairInput(steps: readonly RepairDraft[]) {
  return steps.map((step) => ({
    title: step.title,
    process: step.process as Process,
    standardMinutes: step.minutes === '' ? 0 : Number(step.minutes),
  }));
}

/** The steps a repair takes, in order; they go on the traveler of the part. */
export function RepairPlan(props: { steps: readonly RepairDraft[]; onChange: (steps: RepairDraft[]) => void }) {
  const change = (at: number, changed: Partial<RepairDraft>) =>
    props.onChange(props.steps.map((step, place) => (place === at ? { ...step, ...changed } : step)));
  return (
    <fieldset className="stack">
      <legend>
        <strong>Repair steps</strong> <span className="soft small">in order; they are added to the traveler</span>
      </legend>
      {props.steps.map((step, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: steps have no identity before they are signed
        <div key={place} className="row">
          <TextField
            name={`steps/${place}/title`}
            label={`Step ${place + 1}`}
            value={step.title}
            onChange={(title) => change(place, { title })}
            isRequired
          />
          <Select
            name={`steps/${place}/process`}
            label="Process"
            value={step.process}
            onChange={(process) => change(place, { process })}
            choices={processes.map((value) => ({ value, text: value.replaceAll('-', ' ') }))}
            isRequired
          />
          <DecimalField
            name={`steps/${place}/standardMinutes`}
            label="Standard"
            unit="min"
            decimals={0}
            value={step.minutes}
            onChange={(minutes) => change(place, { minutes })}
          />
          <Button weight="quiet" onPress={() => props.onChange(props.steps.filter((_, at) => at !== place))}>
            Remove
          </Button>
        </div>
      ))}
      <div className="row">
        <Button onPress={() => props.onChange([...props.steps, noStep])}>Add a step</Button>
      </div>
    </fieldset>
  );
}
