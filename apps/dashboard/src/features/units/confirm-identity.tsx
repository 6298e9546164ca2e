import { unitOperations } from '@hubwright/contracts/units/operations';
import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

export interface Unread {
  readonly id: string;
  readonly partNumber: string;
  readonly provisionalName: string | null;
  readonly version: number;
}

/** The inspector reads the serial on the part itself and signs for it. */
export function ReadSerial({ part, signer, onClose }: { part: Unread; signer: Signer; onClose: () => void }) {
  const [serial, setSerial] = useState('');
  const [isSigning, setSigning] = useState(false);
  if (isSigning) {
    return (
      <SignCommand
        op={unitOperations.confirmIdentity}
        input={{ itemId: part.id, serial }}
        version={part.version}
        signer={signer}
        onClose={onClose}
        onSigned={() => {
          say(`${part.partNumber} has the serial ${serial.toUpperCase()}.`);
          onClose();
        }}
      >
        <p>
          {part.partNumber}, until now {part.provisionalName}: serial <span className="code">{serial}</span>
        </p>
      </SignCommand>
    );
  }
  return (
    <Dialog title={`Serial of ${part.provisionalName ?? part.partNumber}`} isOpen onClose={onClose}>
      <CommandForm
        problem={null}
        isPending={false}
        submit="Go on to sign"
        onSubmit={() => setSigning(true)}
        onCancel={onClose}
      >
        <TextField
          name="serial"
          label="Serial as read on the part"
          value={serial}
          onChange={setSerial}
          isCode
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}

/** The dialog it asks for belongs to the page: a part that was read loses this button before the dialog is done. */
export function ReadButton({ part, onRead }: { part: Unread; onRead: (part: Unread) => void }) {
  return (
    <Button onPress={() => onRead(part)}>
      Read the serial<span className="only-heard"> of {part.provisionalName ?? part.partNumber}</span>
    </Button>
  );
}
