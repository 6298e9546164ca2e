import { DecimalField } from '../../../ui/DecimalField.tsx';
import { FieldGroup } from '../../../ui/FieldGroup.tsx';
import { TextField } from '../../../ui/TextField.tsx';
import type { SheetFieldsProps } from './sheet-form.ts';

/** A set-up as it is being written down. */
export type EddyCurrentDraft = Readonly<
  Record<'probe' | 'frequency' | 'gain' | 'standardSerial' | 'notchDepth' | 'before' | 'after', string>
>;

/** The set-up, and the signal from the notch before and after the scan. */
export function EddyCurrentFields({ about, draft, onChange }: SheetFieldsProps<'eddy-current', EddyCurrentDraft>) {
  const { frequency, notchDepth, unit, signal, drift } = about.spec;
  const field = (key: keyof EddyCurrentDraft) => ({
    ...{ name: `sheet/${key}`, value: draft[key], isRequired: true },
    onChange: (text: string) => onChange({ ...draft, [key]: text }),
  });
  const within = ({ low, high }: { low: string; high: string }) => `${low} to ${high} is asked for`;
  return (
    <FieldGroup title="Eddy-current set-up">
      <TextField label="Probe" hint="By its number" isCode {...field('probe')} />
      <DecimalField label="Frequency" hint={within(frequency)} unit={frequency.unit} {...field('frequency')} />
      <DecimalField label="Gain" hint="As set on the screen" unit="dB" {...field('gain')} />
      <TextField label="Reference standard" hint="Its serial" isCode {...field('standardSerial')} />
      <DecimalField
        label="Depth of its notch"
        hint={`${notchDepth} is asked for`}
        unit={unit}
        {...field('notchDepth')}
      />
      <DecimalField label="Signal before the scan" hint={within(signal)} unit="%" {...field('before')} />
      <DecimalField label="Signal after the scan" hint={`Moved by ${drift} % at most`} unit="%" {...field('after')} />
    </FieldGroup>
  );
}
