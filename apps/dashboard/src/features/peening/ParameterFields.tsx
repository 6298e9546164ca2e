import { Button } from '../../ui/Button.tsx';
import { TextField } from '../../ui/TextField.tsx';

export interface ParameterDraft {
  readonly name: string;
  readonly value: string;
  readonly unit: string;
}

/** What a program is set by, with the units a shop of inches uses; common practice, no source. Values are never filled in. */
export const namedParameters: readonly ParameterDraft[] = [
  ['nozzles', ''],
  ['nozzle bore', 'in'],
  ['air pressure', 'psi'],
  ['shot flow', 'lb/min'],
  ['stand-off', 'in'],
  ['speed', 'in/min'],
  ['angle', 'degrees'],
].map(([name = '', unit = '']) => ({ name, value: '', unit }));

/** Those that have a value: what the machine does not know is left out. */
export function parametersIn(drafts: readonly ParameterDraft[]): ParameterDraft[] {
  return drafts
    .map(({ name, value, unit }) => ({ name: name.trim(), value: value.trim(), unit: unit.trim() }))
    .filter(({ name, value }) => name !== '' && value !== '');
}

/** The set-up of a program: named rows to fill, and room for what a machine has beyond them. */
export function ParameterFields(props: {
  parameters: readonly ParameterDraft[];
  onChange: (parameters: readonly ParameterDraft[]) => void;
}) {
  const { parameters, onChange } = props;
  const put = (at: number, changes: Partial<ParameterDraft>) =>
    onChange(parameters.map((one, index) => (index === at ? { ...one, ...changes } : one)));
  return (
    <fieldset className="field-group">
      <legend>Set-up</legend>
      <div className="field-grid">
        {parameters.map((one, at) =>
          at < namedParameters.length ? (
            <TextField
              key={one.name}
              label={one.name}
              value={one.value}
              onChange={(value) => put(at, { value })}
              size={10}
              {...(one.unit ? { unit: one.unit } : {})}
            />
          ) : (
            // biome-ignore lint/suspicious/noArrayIndexKey: a row is told from the next by its place alone
            <div className="row" key={at}>
              <TextField
                label={`Name, row ${at + 1}`}
                value={one.name}
                onChange={(name) => put(at, { name })}
                size={14}
              />
              <TextField
                label={`Value, row ${at + 1}`}
                value={one.value}
                onChange={(value) => put(at, { value })}
                size={8}
              />
              <TextField
                label={`Unit, row ${at + 1}`}
                value={one.unit}
                onChange={(unit) => put(at, { unit })}
                size={6}
              />
            </div>
          ),
        )}
      </div>
      <Button onPress={() => onChange([...parameters, { name: '', value: '', unit: '' }])}>Add a row</Button>
    </fieldset>
  );
}
