import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import type { BuildSheet } from './build-sheet.ts';
import { LeftOverList } from './LeftOverList.tsx';

/** The left-over check and the signature that closes the build. The ledger decides; a refusal names each piece. */
export function CloseBuild({ sheet, signer, mayClose }: { sheet: BuildSheet; signer: Signer; mayClose: boolean }) {
  const [isSigning, setSigning] = useState(false);
  const { judgement } = sheet;
  return (
    <section className="sheet stack" aria-labelledby="close">
      <h2 id="close">Left-over check</h2>
      <LeftOverList sheet={sheet} />
      {mayClose ? (
        <div className="row">
          <Button weight={judgement.closed ? 'next' : 'plain'} onPress={() => setSigning(true)}>
            Close the build
          </Button>
        </div>
      ) : null}
      {isSigning ? (
        <SignCommand
          op={travelerOperations.closeBuild}
          input={{ workOrderId: sheet.workOrderId }}
          signer={signer}
          onClose={() => setSigning(false)}
          onSigned={() => {
            say(`The build of ${sheet.workOrderNumber} is closed.`);
            setSigning(false);
          }}
        >
          <p>
            {sheet.workOrderNumber}: {sheet.positions.filter((line) => line.installed > 0).length} positions filled,
            tray and rack as counted by the ledger
          </p>
        </SignCommand>
      ) : null}
    </section>
  );
}
