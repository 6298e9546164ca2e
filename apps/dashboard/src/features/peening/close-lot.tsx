import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { useState } from 'react';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Lot } from './peening.ts';
import { type Heights, readingsOf, StripFields } from './StripFields.tsx';

type Props = { lot: Lot; signer: Signer; onClose: () => void };

/** The peening of every part of the lot, with the coverage of each area. */
export function SignLot({ lot, signer, onClose }: Props) {
  const [percents, setPercents] = useState<Readonly<Record<string, string>>>({});
  const [isSigning, setSigning] = useState(false);
  const coverage = lot.spec.areas.map(({ name }) => ({ area: name, percent: Number(percents[name] ?? Number.NaN) }));
  if (isSigning)
    return (
      <SignCommand
        op={peeningOperations.signPeeningLot}
        input={{ lotId: lot.id, coverage }}
        version={lot.version}
        signer={signer}
        process="shot-peening"
        onClose={() => setSigning(false)}
        onSigned={({ signOffIds }) => {
          say(`${lot.number} is signed for ${signOffIds.length} parts; its closing strips are next.`);
          onClose();
        }}
      >
        <p>{lot.parts.map(({ workOrderNumber, position }) => `${workOrderNumber} ${position}`).join(', ')}</p>
        <p>{coverage.map(({ area, percent }) => `${area} ${percent} %`).join(', ')}</p>
      </SignCommand>
    );
  return (
    <Dialog title={`${lot.number} is peened`} isOpen onClose={onClose}>
      <CommandForm
        problem={null}
        isPending={false}
        submit="Go on to sign"
        onCancel={onClose}
        onSubmit={() => coverage.every(({ percent }) => Number.isInteger(percent)) && setSigning(true)}
      >
        {lot.spec.areas.map(({ name }, index) => (
          <DecimalField
            key={name}
            name={`coverage/${index}/percent`}
            label={`Coverage, ${name}`}
            hint={`${lot.spec.coverage} % is asked for`}
            unit="%"
            decimals={0}
            value={percents[name] ?? ''}
            onChange={(text) => setPercents({ ...percents, [name]: text })}
            isRequired
          />
        ))}
      </CommandForm>
    </Dialog>
  );
}

/** What the closing strips say, kept as read: it releases the lot, or holds every part of it. */
export function CloseLot({ lot, signer, onClose }: Props) {
  const [heights, setHeights] = useState<Heights>({});
  const [isSigning, setSigning] = useState(false);
  if (isSigning)
    return (
      <SignCommand
        op={peeningOperations.closePeeningLot}
        input={{ lotId: lot.id, closing: readingsOf(lot.spec, heights) }}
        version={lot.version}
        signer={signer}
        onClose={() => setSigning(false)}
        onSigned={({ state }) => {
          say(state === 'released' ? `${lot.number} is released.` : `${lot.number} is held with all its parts.`);
          onClose();
        }}
      >
        <p>{lot.spec.areas.map(({ name, unit }) => `${name} ${heights[name]} ${unit}`).join(', ')}</p>
      </SignCommand>
    );
  return (
    <Dialog title={`Closing strips of ${lot.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={null}
        isPending={false}
        submit="Go on to sign"
        onCancel={onClose}
        onSubmit={() => lot.spec.areas.every(({ name }) => heights[name]) && setSigning(true)}
      >
        <p className="soft">A strip outside its band holds every part of the lot, wherever it is by now.</p>
        <StripFields spec={lot.spec} name="closing" heights={heights} onChange={setHeights} />
      </CommandForm>
    </Dialog>
  );
}

/** What failed strips do not prove is done again. */
export function PeenAgain({ lot, signer, onClose }: Props) {
  const [reason, setReason] = useState('');
  const [isSigning, setSigning] = useState(false);
  if (isSigning)
    return (
      <SignCommand
        op={peeningOperations.peenAgain}
        input={{ lotId: lot.id, reason }}
        version={lot.version}
        signer={signer}
        onClose={() => setSigning(false)}
        onSigned={({ steps }) => {
          say(`${steps} parts of ${lot.number} are peened again.`);
          onClose();
        }}
      >
        <p>{lot.parts.map(({ workOrderNumber, position }) => `${workOrderNumber} ${position}`).join(', ')}</p>
        <p>{reason}</p>
      </SignCommand>
    );
  return (
    <Dialog title={`Peen ${lot.number} again`} isOpen onClose={onClose}>
      <CommandForm
        problem={null}
        isPending={false}
        submit="Go on to sign"
        onCancel={onClose}
        onSubmit={() => reason && setSigning(true)}
      >
        <p>{lot.reasons.join(' ')}</p>
        <p className="soft">
          Every part of it gets the step again; a build that was closed opens. The program is qualified anew before.
        </p>
        <TextField name="reason" label="What went wrong" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
