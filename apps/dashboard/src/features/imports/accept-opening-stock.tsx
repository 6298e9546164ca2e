import { importOperations } from '@hubwright/contracts/imports/operations';
import { countOf } from '../../format/numbers.ts';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import type { ImportDone } from './ImportsDone.tsx';

/** One signature for the lots of an opening stock. */
export function AcceptOpeningStock(props: { of: ImportDone; signer: Signer; onClose: () => void }) {
  const { of, signer, onClose } = props;
  return (
    <SignCommand
      op={importOperations.acceptOpeningStock}
      input={{ importId: of.id }}
      signer={signer}
      onClose={onClose}
      onSigned={({ accepted, left, why }) => {
        const reasons = why.map(({ detail }) => detail).join('. ');
        say(
          left > 0
            ? `${countOf(accepted, 'lot')} accepted, ${left} left: ${reasons}`
            : `${countOf(accepted, 'lot')} accepted.`,
        );
        onClose();
      }}
    >
      <p>
        <strong>Accepted:</strong> {countOf(of.waitingLots, 'lot')} of the opening stock, each into the bin its row
        names.
      </p>
      <p className="small">
        A lot without the certificate its part needs, or past its shelf life, stays in quarantine and is named.
      </p>
    </SignCommand>
  );
}
