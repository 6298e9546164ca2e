import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { returnConditions } from '@hubwright/contracts/vendors/pieces';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { conditionWords, titleOf as title, type VendorOrder } from './vendors.ts';

type Condition = (typeof returnConditions)[number];
/** Nothing is chosen beforehand: a part that nobody looked at stays out. */
const notBack = 'not-back';
const choices = [
  { value: notBack, text: 'not back yet' },
  ...returnConditions.map((value) => ({ value, text: conditionWords[value] })),
];

/** Receiving inspection of what came back: each part's condition, the vendor's certificate, the paper that was due. */
export function TakeBack({ order, signer, onClose }: { order: VendorOrder; signer: Signer; onClose: () => void }) {
  const [found, setFound] = useState<Readonly<Record<string, string>>>({});
  const [note, setNote] = useState('');
  const [certificate, setCertificate] = useState('');
  const [paperCame, setPaperCame] = useState(false);
  const [isSigning, setSigning] = useState(false);
  const [problem, setProblem] = useState<ProblemError | null>(null);
  const out = order.lines.filter(({ condition }) => condition === null);
  const lines = out.flatMap(({ id }) => {
    const condition = found[id];
    return condition && condition !== notBack ? [{ lineId: id, condition: condition as Condition, note }] : [];
  });
  const whole = lines.length === out.length;
  const pieces = whole ? order.pieces.map(({ lotId, quantity }) => ({ lotId, quantity })) : [];
  return (
    <>
      <Dialog title={`Take back ${order.number}`} isOpen={!isSigning} onClose={onClose}>
        <CommandForm
          problem={problem}
          isPending={false}
          submit="Sign the receiving inspection"
          onCancel={onClose}
          onSubmit={() => setSigning(true)}
        >
          {out.map((line) => (
            <Select
              key={line.id}
              name={`lines/${line.id}`}
              label={title(line)}
              placeholder="Look at it, then choose"
              value={found[line.id] ?? null}
              onChange={(value) => setFound({ ...found, [line.id]: value })}
              choices={choices}
              isRequired
            />
          ))}
          <TextField
            name="certificate"
            label="Vendor’s certificate or release number"
            value={certificate}
            onChange={setCertificate}
            isRequired
          />
          <Checkbox name="paperCame" isSelected={paperCame} onChange={setPaperCame}>
            Came back with them: {order.paperDue}
          </Checkbox>
          <TextField name="note" label="What was seen" value={note} onChange={setNote} />
          {order.pieces.length > 0 ? (
            <p className="small">
              {whole ? 'Back into the rack with them: ' : 'Stay out; take them back by themselves when they come: '}
              {order.pieces.map(({ quantity, part, lotCode }) => `${quantity} × ${part} (${lotCode})`).join(', ')}
            </p>
          ) : null}
        </CommandForm>
      </Dialog>
      {isSigning ? (
        <SignCommand
          op={vendorOperations.takeBack}
          input={{ orderId: order.id, lines, certificate, paperCame, pieces }}
          version={order.version}
          signer={signer}
          onWrongInput={(wrong) => {
            setProblem(wrong);
            setSigning(false);
          }}
          onClose={() => setSigning(false)}
          onSigned={({ state, refused }) => {
            say(
              `${order.number} ${state === 'back' ? 'is back' : 'is back in part'}${refused > 0 ? `; ${refused} not good` : ''}.`,
            );
            onClose();
          }}
        >
          <ul>
            {out
              .filter(({ id }) => lines.some(({ lineId }) => lineId === id))
              .map((line) => (
                <li key={line.id}>
                  {title(line)}: {conditionWords[found[line.id] as Condition]}
                </li>
              ))}
          </ul>
          <p>
            Certificate {certificate}; {order.paperDue} {paperCame ? 'is here' : 'is missing'}.
          </p>
        </SignCommand>
      ) : null}
    </>
  );
}
