import { documentOperations } from '@hubwright/contracts/manuals/document-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { WorkDocument } from './documents.ts';

/** Its issuer cancelled it: work goes by it no more, records that named it stay. */
export function WithdrawDocument({ document, onClose }: { document: WorkDocument; onClose: () => void }) {
  const withdraw = useCommand(documentOperations.withdrawDocument);
  const [reason, setReason] = useState('');
  const send = () =>
    withdraw.mutate(
      { input: { documentId: document.id, reason }, version: document.version },
      {
        onSuccess: () => {
          say(`${document.number} is withdrawn.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Withdraw ${document.number}?`} isOpen onClose={onClose}>
      <CommandForm
        problem={withdraw.error}
        isPending={withdraw.isPending}
        submit="Withdraw it"
        onSubmit={send}
        onCancel={onClose}
      >
        <TextField
          name="reason"
          label="Who cancelled it, and what took its place"
          value={reason}
          onChange={setReason}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
