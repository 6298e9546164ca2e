import { countOperations } from '@hubwright/contracts/inventory/count-operations';
import { givingBackOperations } from '@hubwright/contracts/inventory/giving-back-operations';
import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import type { Operation } from '@hubwright/contracts/operation';
import { useState } from 'react';
import { useMe } from '../../api/me.ts';
import { mayCall } from '../../api/permission.ts';
import { CertificateDialog } from '../../features/inventory/add-certificate.tsx';
import { CountDialog } from '../../features/inventory/count-lot.tsx';
import { DecideSuspicionDialog } from '../../features/inventory/decide-suspicion.tsx';
import { GiveBackDialog } from '../../features/inventory/give-back-lot.tsx';
import { JudgeDialog } from '../../features/inventory/judge-lot.tsx';
import { type Lot, onHandAt } from '../../features/inventory/lots.ts';
import { MergeDialog } from '../../features/inventory/merge-lots.tsx';
import { MoveDialog } from '../../features/inventory/move-lot.tsx';
import { PutAwayDialog } from '../../features/inventory/put-away.tsx';
import { QuarantineDialog } from '../../features/inventory/quarantine-lot.tsx';
import { ReturnDialog } from '../../features/inventory/return-lot.tsx';
import { ScrapDialog } from '../../features/inventory/scrap-lot.tsx';
import { SplitDialog } from '../../features/inventory/split-lot.tsx';
import { SurrenderDialog } from '../../features/inventory/surrender-lot.tsx';
import { SuspectDialog } from '../../features/inventory/suspect-lot.tsx';
import { Button } from '../../ui/Button.tsx';

type ActionId =
  | 'judge'
  | 'put-away'
  | 'certificate'
  | 'move'
  | 'count'
  | 'split'
  | 'merge'
  | 'return'
  | 'quarantine'
  | 'suspect'
  | 'decide'
  | 'surrender'
  | 'give-back'
  | 'scrap';

interface Action {
  readonly id: ActionId;
  readonly text: string;
  readonly op: Operation;
  readonly fits: boolean;
}

/** What can be done with the lot as it stands, the next thing first. */
function actionsFor(lot: Lot): readonly Action[] {
  const stock = inventoryOperations;
  const handling = handlingOperations;
  const waits = onHandAt(lot, 'quarantine') > 0;
  const inBins = onHandAt(lot, 'bin') > 0;
  const held = onHandAt(lot, 'held') > 0;
  const isStock = lot.origin !== 'taken-off';
  const suspected = lot.state === 'suspected';
  const here = isStock && (inBins || waits) && !suspected;
  const mayDivide = here || (isStock && held && lot.surrender === null && !suspected);
  const mayScrap = lot.owner ? held && lot.surrender !== null : here;
  return [
    { id: 'decide', text: 'Decide the suspicion', op: handling.decideSuspicion, fits: suspected },
    { id: 'judge', text: 'Accept or reject', op: stock.judgeLot, fits: isStock && lot.state === 'quarantine' },
    { id: 'put-away', text: 'Put away', op: stock.putAway, fits: lot.state === 'accepted' && waits },
    { id: 'surrender', text: 'Given up by its owner', op: handling.surrenderLot, fits: held && lot.surrender === null },
    {
      ...{ id: 'give-back', text: 'Give back to its owner', op: givingBackOperations.giveBackLot },
      fits: held && lot.surrender === null,
    },
    { id: 'certificate', text: 'Certificate', op: stock.addCertificate, fits: isStock },
    { id: 'move', text: 'Move', op: stock.moveLot, fits: inBins },
    { id: 'count', text: 'Count', op: countOperations.countLot, fits: isStock && (inBins || waits) },
    { id: 'split', text: 'Split', op: handling.splitLot, fits: mayDivide && lot.serial === null },
    { id: 'merge', text: 'Merge', op: handling.mergeLots, fits: mayDivide && lot.serial === null },
    { id: 'return', text: 'Return', op: handling.returnToSupplier, fits: here && lot.order !== null },
    { id: 'quarantine', text: 'Take out of use', op: stock.quarantineLot, fits: lot.state === 'accepted' && isStock },
    { id: 'suspect', text: 'Suspect', op: handling.suspectLot, fits: isStock && !suspected },
    { id: 'scrap', text: 'Scrap', op: handling.scrapLot, fits: mayScrap },
  ];
}

const weights: Partial<Record<ActionId, 'next' | 'stop'>> = {
  decide: 'next',
  judge: 'next',
  'put-away': 'next',
  scrap: 'stop',
};

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
    split: <SplitDialog lot={lot} onClose={close} />,
    merge: <MergeDialog lot={lot} onClose={close} />,
    return: <ReturnDialog lot={lot} onClose={close} />,
    quarantine: <QuarantineDialog lot={lot} onClose={close} />,
    suspect: <SuspectDialog lot={lot} onClose={close} />,
    decide: <DecideSuspicionDialog lot={lot} signer={me} onClose={close} />,
    surrender: <SurrenderDialog lot={lot} onClose={close} />,
    'give-back': <GiveBackDialog lot={lot} onClose={close} />,
    scrap: <ScrapDialog lot={lot} signer={me} onClose={close} />,
  };
  return (
    <div className="row">
      {offered.map(({ id, text }) => (
        <Button key={id} weight={weights[id] ?? 'plain'} onPress={() => setAsked(id)}>
          {text}
        </Button>
      ))}
      {asked ? dialogs[asked] : null}
    </div>
  );
}
