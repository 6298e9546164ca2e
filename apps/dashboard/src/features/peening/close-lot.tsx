import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Lot } from './peening.ts';
import { areRead, netWords, noStrips, readingsOf, StripFields } from './StripFields.tsx';

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
  const [strips, setStrips] = useState(noStrips);
  const [problem, setProblem] = useState<ProblemError | null>(null);
  const [isSigning, setSigning] = useState(false);
  if (isSigning)
    return (
      <SignCommand
        op={peeningOperations.closePeeningLot}
        input={{ lotId: lot.id, closing: readingsOf(lot.spec, strips) }}
        version={lot.version}
        signer={signer}
        onClose={() => setSigning(false)}
        onWrongInput={(wrong) => {
          setProblem(wrong);
          setSigning(false);
        }}
        onSigned={({ state }) => {
          say(state === 'released' ? `${lot.number} is released.` : `${lot.number} is held with all its parts.`);
          onClose();
        }}
      >
        <p>{netWords(lot.spec, strips)}</p>
      </SignCommand>
    );
  return (
    <Dialog title={`Closing strips of ${lot.number}`} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={problem}
        isPending={false}
        submit="Go on to sign"
        onCancel={onClose}
        onSubmit={() => areRead(lot.spec, strips) && setSigning(true)}
      >
        <p className="soft">A strip outside its band holds every part of the lot, wherever it is by now.</p>
        <StripFields spec={lot.spec} name="closing" strips={strips} onChange={setStrips} />
      </CommandForm>
    </Dialog>
  );
}
