import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Placed } from './build-sheet.ts';

/** The inspector passes a part that came off for reuse in its unit: a signature. */
export function PassRackPart(props: { kitId: string; lot: Placed; signer: Signer; onClose: () => void }) {
  const { lot } = props;
  return (
    <SignCommand
      op={kitsOperations.passRackPart}
      input={{ kitId: props.kitId, lotId: lot.lotId, note: '' }}
      signer={props.signer}
      onClose={props.onClose}
      onSigned={() => {
        say(`${lot.part.number} may go back in.`);
        props.onClose();
      }}
    >
      <p>
        {lot.quantity} <span className="code">{lot.part.number}</span> {lot.part.description}, from {lot.position},{' '}
        {lot.lotCode}
      </p>
    </SignCommand>
  );
}
