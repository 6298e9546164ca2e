import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import type { Operation } from '@hubwright/contracts/operation';
import { useState } from 'react';
import { useMe } from '../../api/me.ts';
import { mayCall } from '../../api/permission.ts';
import { CertificateDialog } from '../../features/inventory/add-certificate.tsx';
import { CountDialog } from '../../features/inventory/count-lot.tsx';
import { JudgeDialog } from '../../features/inventory/judge-lot.tsx';
import { type Lot, onHandAt } from '../../features/inventory/lots.ts';
import { MoveDialog } from '../../features/inventory/move-lot.tsx';
import { PutAwayDialog } from '../../features/inventory/put-away.tsx';
import { QuarantineDialog } from '../../features/inventory/quarantine-lot.tsx';
import { ScrapDialog } from '../../features/inventory/scrap-lot.tsx';
import { Button } from '../../ui/Button.tsx';

type ActionId = 'judge' | 'put-away' | 'certificate' | 'move' | 'count' | 'quarantine' | 'scrap';

interface Action {
  readonly id: ActionId;
  readonly text: string;
  readonly op: Operation;
  readonly fits: boolean;
}

/** What can be done with the lot as it stands, the next thing first. */
function actionsFor(lot: Lot): readonly Action[] {
  const { judgeLot, putAway, addCertificate, moveLot, countLot, quarantineLot, scrapLot } = inventoryOperations;
  const waits = onHandAt(lot, 'quarantine') > 0;
  const inBins = onHandAt(lot, 'bin') > 0;
  const isStock = lot.origin !== 'taken-off';
  return [
    { id: 'judge', text: 'Accept or reject', op: judgeLot, fits: isStock && lot.state === 'quarantine' },
    { id: 'put-away', text: 'Put away', op: putAway, fits: lot.state === 'accepted' && waits },
    { id: 'certificate', text: 'Certificate', op: addCertificate, fits: isStock },
    { id: 'move', text: 'Move', op: moveLot, fits: inBins },
    { id: 'count', text: 'Count', op: countLot, fits: isStock && (inBins || waits) },
    { id: 'quarantine', text: 'Take out of use', op: quarantineLot, fits: lot.state === 'accepted' && isStock },
    { id: 'scrap', text: 'Scrap', op: scrapLot, fits: isStock && (inBins || waits) },
  ];
}

export function LotActions({ lot }: { lot: Lot }) {
  const me = useMe();
  const [asked, setAsked] = useState<ActionId>();
  const close = () => setAsked(undefined);
  const offered = actionsFor(lot).filter((action) => action.fits && mayCall(action.op, me.roles));
  const dialogs: Record<ActionId, React.ReactNode> = {
    judge: <JudgeDialog lot={lot} signer={me} onClose={close} />,
    'put-away': <PutAwayDialog lot={lot} onClose={close} />,
    certificate: <CertificateDialog lot={lot} onClose={close} />,
    move: <MoveDialog lot={lot} onClose={close} />,
    count: <CountDialog lot={lot} onClose={close} />,
    quarantine: <QuarantineDialog lot={lot} onClose={close} />,
    scrap: <ScrapDialog lot={lot} onClose={close} />,
  };
  return (
    <div className="row">
      {offered.map(({ id, text }) => (
        <Button
          key={id}
          weight={id === 'judge' || id === 'put-away' ? 'next' : id === 'scrap' ? 'stop' : 'plain'}
          onPress={() => setAsked(id)}
        >
          {text}
        </Button>
      ))}
      {asked ? dialogs[asked] : null}
    </div>
  );
}
