import { holdOperations, type trayHolds } from '@hubwright/contracts/kits/hold-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { TrayLot } from './kit-detail.ts';

type As = (typeof trayHolds)[number];
const choices = [
  { value: 'suspected', text: 'it may not be what its paper says (suspected unapproved)' },
  { value: 'quarantine', text: 'it may not be good: to be judged again' },
] as const;

/** A lot in a tray that somebody doubts: out of the tray and out of use at once, wherever it lies in bins. */
export function HoldFromTrayDialog({ kitId, lot, onClose }: { kitId: string; lot: TrayLot; onClose: () => void }) {
  const hold = useCommand(holdOperations.holdFromTray);
  const [as, setAs] = useState<As | null>(null);
  const [reason, setReason] = useState('');
  const send = () =>
    hold.mutate(
      { input: { kitId, lotCode: lot.lotCode, as: as as As, reason } },
      {
        onSuccess: () => {
          say(`${lot.lotCode} is held apart; the kit needs others.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Hold ${lot.lotCode} apart`} isOpen onClose={onClose}>
      <CommandForm
        problem={hold.error}
        isPending={hold.isPending}
        submit="Hold it apart"
        onSubmit={send}
        onCancel={onClose}
      >
        <p>All of the lot in this tray and in bins goes to quarantine, and what was promised of it falls away.</p>
        <Select
          name="as"
          label="Why"
          placeholder="Choose what the doubt is"
          value={as}
          onChange={(value) => setAs(value as As)}
          choices={choices}
          isRequired
        />
        <TextField name="reason" label="What was seen" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
