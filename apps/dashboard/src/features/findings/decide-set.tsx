import { setOperations } from '@hubwright/contracts/findings/set-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { findingQuery } from './findings.ts';

interface Question {
  readonly findingId: string;
  readonly number: string;
  readonly position: string;
  readonly mates: readonly {
    readonly travelerId: string;
    readonly position: string;
    readonly serial: string;
    readonly isOpposite: boolean;
  }[];
}

const answers = [
  { value: 'stays', text: 'Stays: its new mate is matched to it' },
  { value: 'rejected', text: 'Rejected with it' },
] as const;
type Answer = (typeof answers)[number]['value'];

/** A rejected blade asks of each that is left; nothing is answered beforehand. */
export function DecideSet({ question, signer, onClose }: { question: Question; signer: Signer; onClose: () => void }) {
  const finding = useQuery(findingQuery(question.findingId)).data;
  const [said, setSaid] = useState<Readonly<Record<string, Answer>>>({});
  const [reason, setReason] = useState('');
  const [isSigning, setSigning] = useState(false);
  const mates = question.mates.map(({ travelerId }) => ({ travelerId, stays: said[travelerId] === 'stays' }));
  if (isSigning && finding)
    return (
      <SignCommand
        op={setOperations.decideSet}
        input={{ findingId: question.findingId, mates, reason }}
        version={finding.version}
        signer={signer}
        onClose={onClose}
        onSigned={({ rejected }) => {
          say(rejected.length > 0 ? `Decided; ${rejected.join(', ')} rejected with it.` : 'Decided: all others stay.');
          onClose();
        }}
      >
        <ul className="lines">
          {question.mates.map((mate) => (
            <li key={mate.travelerId}>
              <span>
                {mate.position} <span className="code">{mate.serial}</span>
              </span>
              <strong>{said[mate.travelerId] === 'stays' ? 'stays' : 'rejected'}</strong>
            </li>
          ))}
        </ul>
        <p>{reason}</p>
      </SignCommand>
    );
  return (
    <Dialog title={`${question.number} rejected ${question.position}: the other blades`} isOpen onClose={onClose}>
      <CommandForm
        problem={null}
        isPending={!finding}
        submit="Go on to sign"
        onCancel={onClose}
        onSubmit={() => question.mates.every(({ travelerId }) => said[travelerId]) && reason && setSigning(true)}
      >
        {question.mates.map((mate) => (
          <Select
            key={mate.travelerId}
            name={`mates/${mate.travelerId}`}
            label={`${mate.position}, ${mate.serial}${mate.isOpposite ? ', across the hub' : ''}`}
            value={said[mate.travelerId] ?? null}
            onChange={(answer: Answer) => setSaid({ ...said, [mate.travelerId]: answer })}
            choices={answers}
            isRequired
          />
        ))}
        <TextField
          name="reason"
          label="Why"
          hint="Compared with what the manual allows within a set"
          value={reason}
          onChange={setReason}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
