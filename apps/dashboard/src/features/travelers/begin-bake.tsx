import type { EquipmentKind } from '@hubwright/contracts/manuals/words';
import { bakeOperations } from '@hubwright/contracts/work-orders/bake-operations';
import type { BakeClock } from '@hubwright/contracts/work-orders/bake-shapes';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Caution } from '../../ui/Caution.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { BakeMark } from './BakeMark.tsx';
import type { Which } from './bake-actions.tsx';
import { EquipmentField } from './EquipmentField.tsx';
import { justNow, LateEntry, latenessInput } from './late-entry.tsx';

const words = {
  ...{ field: 'begunAt', tick: 'It went in earlier', at: 'Into the oven at', why: 'Why it is entered only now' },
};

interface BeginBakeProps {
  readonly which: Which;
  readonly clock: BakeClock;
  readonly equipmentKind: EquipmentKind | null;
  readonly name: string;
  readonly onClose: () => void;
}

/** When it went into the oven: now, or earlier with the reason. No signature; that comes with the chart. */
export function BeginBake({ which, clock, equipmentKind, name, onClose }: BeginBakeProps) {
  const begin = useCommand(bakeOperations.beginBake);
  const [oven, setOven] = useState('');
  const [equipmentId, setEquipmentId] = useState<string | null>(null);
  const [lateness, setLateness] = useState(justNow);
  const { performedAt, lateReason } = latenessInput(lateness);
  const input = {
    ...which,
    ...(equipmentId === null ? {} : { equipmentId }),
    ...(oven.trim() === '' ? {} : { oven: oven.trim() }),
    ...(performedAt ? { begunAt: performedAt } : {}),
    ...(lateReason ? { lateReason } : {}),
  };
  const submit = () =>
    begin.mutate(
      { input },
      {
        onSuccess: ({ bakes }) => {
          const late = bakes.filter(({ lateByMinutes }) => lateByMinutes > 0).length;
          say(late > 0 ? `In the oven, put down as begun too late for ${late} of ${bakes.length}.` : 'In the oven.');
          onClose();
        },
      },
    );
  return (
    <Dialog title={`${name}: into the oven`} isOpen onClose={onClose}>
      <CommandForm
        problem={begin.error}
        isPending={begin.isPending}
        submit="It is in the oven"
        onCancel={onClose}
        onSubmit={submit}
      >
        <p>
          <BakeMark clock={clock} />
        </p>
        <Caution>
          Ovens and what comes out of them burn: protect hands and face as the approved procedure says. A bake begun too
          late is put down as late and is not signed as good.
        </Caution>
        {'loadId' in which ? null : equipmentKind ? (
          <EquipmentField kind={equipmentKind} value={equipmentId} onChange={setEquipmentId} />
        ) : (
          <TextField name="oven" label="Oven" hint="As it is called in the shop" value={oven} onChange={setOven} />
        )}
        <LateEntry value={lateness} onChange={setLateness} words={words} />
      </CommandForm>
    </Dialog>
  );
}
