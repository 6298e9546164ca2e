import type { SheetOf } from '@hubwright/contracts/manuals/sheets';
import type { ReactNode } from 'react';
import { Checkbox, RadioList } from '../../../ui/Checkbox.tsx';
import { DecimalField } from '../../../ui/DecimalField.tsx';
import { SheetGroup } from './SheetGroup.tsx';
import type { SheetFieldsProps } from './sheet-form.ts';
import { type AdapterDraft, adapterOf, type TorqueDraft } from './torque-draft.ts';

type Group = SheetOf<'torque'>['groups'][number];

const effects = [
  { value: 'none', text: 'No adapter, or at a right angle' },
  { value: 'longer', text: 'Adapter makes the wrench longer' },
  { value: 'shorter', text: 'Adapter goes back towards the grip' },
] as const;

/** Threads and wrench of one kind of nut, then its passes. */
export function TorqueGroupFields({
  about,
  draft,
  onChange,
  group,
  children,
}: SheetFieldsProps<'torque', TorqueDraft> & { group: Group; children: ReactNode }) {
  const { name, count, low, high, threads } = group;
  const { unit, lengthUnit } = about.spec;
  const adapter = adapterOf(draft, name);
  const change = (more: Partial<AdapterDraft>) =>
    onChange({ ...draft, adapters: { ...draft.adapters, [name]: { ...adapter, ...more } } });
  const title = name.charAt(0).toUpperCase() + name.slice(1);
  return (
    <section aria-label={title}>
      <SheetGroup
        title={count === 1 ? title : `${title} 1 to ${count}`}
        note={`${low} to ${high} ${unit} at the nut, threads ${threads}.`}
      >
        <Checkbox
          isSelected={draft.threads.includes(name)}
          onChange={(is) =>
            onChange({ ...draft, threads: [...draft.threads.filter((one) => one !== name), ...(is ? [name] : [])] })
          }
        >
          Threads {threads}, as I see them
        </Checkbox>
        <RadioList
          label="Adapter on the wrench"
          value={adapter.effect}
          onChange={(effect) => change({ effect })}
          choices={effects}
          isRequired
        />
        {adapter.effect === null || adapter.effect === 'none' ? null : (
          <div className="field-grid">
            <DecimalField
              label="Lever of the wrench"
              hint="Middle of the grip to the drive"
              unit={lengthUnit}
              value={adapter.lever}
              onChange={(lever) => change({ lever })}
              isRequired
            />
            <DecimalField
              label="Adapter"
              hint="Drive to nut, measured along the wrench"
              unit={lengthUnit}
              value={adapter.length}
              onChange={(length) => change({ length })}
              isRequired
            />
          </div>
        )}
      </SheetGroup>
      {children}
    </section>
  );
}
