import type { CarriedKind } from '@hubwright/contracts/units/carried';
import { dimensionOperations } from '@hubwright/contracts/work-orders/dimension-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { countOf } from '../../format/numbers.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

type Basis = 'as-found' | 'kept' | 'new' | 'measured';

/** What is about to be recorded, and what may be said of it. */
export interface Carrying {
  readonly workOrderId: string;
  readonly itemId: string;
  readonly kind: CarriedKind;
  readonly place: string;
  readonly title: string;
  /** Values to choose from; none for a mark that is typed. */
  readonly values: readonly string[];
  readonly bases: readonly Basis[];
}

const basisWords: Record<Basis, string> = {
  'as-found': 'As found when it came apart',
  kept: 'Put back: the set that came from here',
  new: 'New on this visit',
  measured: 'Measured on this visit',
};

/** Puts on record what a part carries from visit to visit; nothing recorded before is overwritten. */
export function RecordCarried({ carrying, onClose }: { carrying: Carrying; onClose: () => void }) {
  const record = useCommand(dimensionOperations.recordCarried);
  const { title, values, bases, ...of } = carrying;
  const [value, setValue] = useState<string | null>(null);
  const [basis, setBasis] = useState<Basis | null>(bases.length === 1 ? (bases[0] ?? null) : null);
  return (
    <Dialog title={title} isOpen onClose={onClose}>
      <CommandForm
        problem={record.error}
        isPending={record.isPending}
        submit="Put on record"
        onCancel={onClose}
        onSubmit={() =>
          record.mutate(
            { input: { ...of, value: value ?? '', basis: basis as Basis } },
            {
              onSuccess: ({ steps }) => {
                say(steps > 0 ? `Recorded; the limits of ${countOf(steps, 'open step')} follow.` : 'Recorded.');
                onClose();
              },
            },
          )
        }
      >
        {values.length > 0 ? (
          <Select
            name="value"
            label="Value"
            value={value}
            onChange={setValue}
            choices={values.map((one) => ({ value: one, text: one }))}
            isRequired
          />
        ) : (
          <TextField name="value" label="Mark on the set" value={value ?? ''} onChange={setValue} isCode isRequired />
        )}
        {bases.length > 1 ? (
          <Select
            name="basis"
            label="How it is known"
            value={basis}
            onChange={setBasis}
            choices={bases.map((one) => ({ value: one, text: basisWords[one] }))}
            isRequired
          />
        ) : null}
      </CommandForm>
    </Dialog>
  );
}
