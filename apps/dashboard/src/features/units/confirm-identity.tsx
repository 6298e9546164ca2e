import { unitOperations } from '@hubwright/contracts/units/operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { queryFor } from '../../api/query.ts';
import { Button } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type KnownIdentity, KnownPart } from './KnownPart.tsx';

export interface Unread {
  readonly id: string;
  readonly partNumber: string;
  readonly provisionalName: string | null;
  readonly version: number;
}

interface ReadProps {
  part: Unread;
  signer: Signer;
  onClose: () => void;
}

type SignedProps = ReadProps & { serial: string };

/** A serial the shop has not seen: the inspector signs that it was read. */
function SignNew({ part, serial, signer, onClose }: SignedProps) {
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

/** A serial on record: this part is that one. */
function SignKnown({
  part,
  serial,
  signer,
  onClose,
  joining,
}: SignedProps & { joining: NonNullable<KnownIdentity['joining']> }) {
  return (
    <SignCommand
      op={unitOperations.joinIdentity}
      input={{ itemId: part.id, serial }}
      version={part.version}
      signer={signer}
      onClose={onClose}
      onSigned={() => {
        say(
          `${part.provisionalName ?? part.partNumber} is ${joining.known.partNumber} serial ${joining.known.serial}.`,
        );
        onClose();
      }}
    >
      <p>
        {part.partNumber}, until now {part.provisionalName}: serial <span className="code">{serial.toUpperCase()}</span>
      </p>
      <KnownPart joining={joining} />
    </SignCommand>
  );
}

const thatOne = (joining: KnownIdentity['joining'] | undefined) =>
  joining?.known.kind === 'assembly' ? 'This is that unit' : 'This is that part';

/** Whether the shop knows this serial decides what is signed, and is shown before it is. */
function ReadAgainst({ again, ...props }: SignedProps & { again: () => void }) {
  const asked = useQuery({
    ...queryFor(unitOperations.knownIdentity, { itemId: props.part.id, serial: props.serial }),
    staleTime: 0,
  });
  const [isThat, setThat] = useState(false);
  const joining = asked.data?.joining;
  if (asked.data && !joining) return <SignNew {...props} />;
  if (isThat && joining) return <SignKnown {...props} joining={joining} />;
  return (
    <Dialog title={`Serial ${props.serial.toUpperCase()}`} isOpen onClose={props.onClose}>
      <CommandForm
        problem={asked.error}
        isPending={asked.isPending}
        submit={asked.data?.refused === null ? thatOne(joining) : 'Read it again'}
        onSubmit={() => (asked.data?.refused === null ? setThat(true) : again())}
        onCancel={props.onClose}
      >
        {joining && asked.data?.refused === null ? <KnownPart joining={joining} /> : null}
        {asked.data?.refused ? <p role="alert">{asked.data.refused}. Two parts cannot have one identity.</p> : null}
      </CommandForm>
    </Dialog>
  );
}

/** The inspector reads the serial on the part itself and signs for it. */
export function ReadSerial(props: ReadProps) {
  const { part, onClose } = props;
  const [serial, setSerial] = useState('');
  const [isRead, setRead] = useState(false);
  if (isRead) return <ReadAgainst {...props} serial={serial} again={() => setRead(false)} />;
  return (
    <Dialog title={`Serial of ${part.provisionalName ?? part.partNumber}`} isOpen onClose={onClose}>
      <CommandForm
        problem={null}
        isPending={false}
        submit="Go on to sign"
        onSubmit={() => setRead(serial.trim() !== '')}
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
