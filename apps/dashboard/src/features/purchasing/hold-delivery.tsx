import { heldCauses, heldCauseTitles, heldOperations } from '@hubwright/contracts/purchasing/held-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Held } from './held.ts';
import type { Expected } from './orders.ts';

const causes = heldCauses.map((value) => ({ value, text: heldCauseTitles[value] }));

/** Set aside what came instead of, or beyond, what was ordered. */
export function HoldDialog({ line, onClose }: { line: Expected | undefined; onClose: () => void }) {
  const hold = useCommand(heldOperations.holdDelivery);
  const [cause, setCause] = useState<(typeof heldCauses)[number]>(line ? 'wrong-part' : 'not-ordered');
  const [draft, setDraft] = useState({ what: '', quantity: '', deliveryNote: '', note: '' });
  const put = (key: keyof typeof draft) => (text: string) => setDraft({ ...draft, [key]: text });
  const send = () =>
    hold.mutate(
      {
        input: {
          ...draft,
          cause,
          quantity: draft.quantity === '' ? Number.NaN : Number(draft.quantity),
          ...(line ? { lineId: line.id } : {}),
        },
      },
      {
        onSuccess: ({ number }) => {
          say(`${number} is set aside; mark the box with it.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title="Hold what is not taken" isOpen onClose={onClose}>
      <CommandForm problem={hold.error} isPending={hold.isPending} submit="Hold it" onSubmit={send} onCancel={onClose}>
        <p>
          It enters no stock and no kit counts on it.{' '}
          {line ? `${line.order.number} stays open for what was ordered.` : ''}
        </p>
        <Select
          name="cause"
          label="Why it is not taken"
          value={cause}
          onChange={setCause}
          choices={causes}
          isRequired
        />
        <TextField
          name="what"
          label="What came"
          hint="Part number as on the bag"
          value={draft.what}
          onChange={put('what')}
          isRequired
        />
        <DecimalField
          name="quantity"
          label="How many are held"
          decimals={0}
          value={draft.quantity}
          onChange={put('quantity')}
          isRequired
        />
        <TextField
          name="deliveryNote"
          label="Delivery note"
          value={draft.deliveryNote}
          onChange={put('deliveryNote')}
          isCode
        />
        <TextField name="note" label="Note" lines={2} value={draft.note} onChange={put('note')} />
      </CommandForm>
    </Dialog>
  );
}

/** It went back, under which paper. */
export function ReturnDialog({ held, today, onClose }: { held: Held; today: string; onClose: () => void }) {
  const back = useCommand(heldOperations.returnHeld);
  const [returnedOn, setReturnedOn] = useState(today);
  const [returnNote, setReturnNote] = useState('');
  const send = () =>
    back.mutate(
      { input: { heldId: held.id, returnedOn, returnNote }, version: held.version },
      {
        onSuccess: () => {
          say(`${held.number} went back.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Send back ${held.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={back.error}
        isPending={back.isPending}
        submit="It went back"
        onSubmit={send}
        onCancel={onClose}
      >
        <p>
          {held.quantity} × {held.what}
        </p>
        <DateField name="returnedOn" label="Went back on" value={returnedOn} onChange={setReturnedOn} isRequired />
        <TextField
          name="returnNote"
          label="Under which paper"
          hint="Number of the supplier’s return, or of the parcel"
          value={returnNote}
          onChange={setReturnNote}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
