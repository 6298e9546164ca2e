import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type LotDialogProps, LotForm } from './lot-form.tsx';

/** The certificate came after the parts, or was mistyped. */
export function CertificateDialog({ lot, onClose }: LotDialogProps) {
  const add = useCommand(inventoryOperations.addCertificate);
  const [certificate, setCertificate] = useState(lot.certificate);
  const send = () =>
    add.mutate(
      { input: { lotId: lot.id, certificate }, version: lot.version },
      {
        onSuccess: () => {
          say(`The certificate of ${lot.code} is written down.`);
          onClose();
        },
      },
    );
  return (
    <LotForm
      title={`Certificate of ${lot.code}`}
      command={add}
      submit="Write it down"
      onSubmit={send}
      onClose={onClose}
    >
      <TextField
        name="certificate"
        label="Certificate"
        hint="The number or tracking code printed on it"
        value={certificate}
        onChange={setCertificate}
        isRequired
      />
    </LotForm>
  );
}
