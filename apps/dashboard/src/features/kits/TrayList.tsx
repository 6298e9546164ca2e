import { holdOperations } from '@hubwright/contracts/kits/hold-operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { HoldFromTrayDialog } from './hold-from-tray.tsx';
import type { Kit, TrayLot } from './kit-detail.ts';
import { RejectFromTrayDialog } from './reject-from-tray.tsx';
import { ReturnDialog } from './return-from-tray.tsx';
import { ScrapFromTrayDialog } from './scrap-from-tray.tsx';
import { SwapDialog } from './swap-lot.tsx';

interface Asked {
  readonly what: 'return' | 'scrap' | 'swap' | 'hold' | 'reject';
  readonly lot: TrayLot;
}

/** What may be done with a lot of the tray: each asks in a dialog. */
function LotButtons(props: { lot: TrayLot; mayMove: boolean; onAsk: (what: Asked['what']) => void }) {
  const { lot, mayMove, onAsk } = props;
  const mayHold = useMay(holdOperations.holdFromTray);
  const mayReject = useMay(holdOperations.rejectFromTray);
  return (
    <>
      {mayMove ? (
        <>
          <Button onPress={() => onAsk('return')} aria-label={`Return ${lot.lotCode}`}>
            Return
          </Button>
          <Button weight="quiet" onPress={() => onAsk('swap')} aria-label={`Swap ${lot.lotCode} for another lot`}>
            Swap
          </Button>
          <Button weight="quiet" onPress={() => onAsk('scrap')} aria-label={`Damaged: scrap pieces of ${lot.lotCode}`}>
            Damaged
          </Button>
        </>
      ) : null}
      {mayHold ? (
        <Button weight="quiet" onPress={() => onAsk('hold')} aria-label={`In doubt: hold ${lot.lotCode} apart`}>
          Hold
        </Button>
      ) : null}
      {mayReject && lot.sourceClass === 'customer-supplied' ? (
        <Button
          weight="quiet"
          onPress={() => onAsk('reject')}
          aria-label={`Reject pieces of ${lot.lotCode} for their owner`}
        >
          Reject
        </Button>
      ) : null}
    </>
  );
}

/** What lies in the kit's tray; each lot can go back to its bin, to scrap when it was damaged, or be held apart. */
export function TrayList({ kit, mayMove }: { kit: Kit; mayMove: boolean }) {
  const [asked, setAsked] = useState<Asked>();
  const close = () => setAsked(undefined);
  if (kit.tray.length === 0) return <EmptyState title="The tray is empty">Scan a lot to put it in.</EmptyState>;
  return (
    <>
      <ul className="lines">
        {kit.tray.map((lot) => (
          <li key={`${lot.lotId}${lot.lineId ?? ''}`}>
            <div>
              <p>
                {lot.quantity} × <span className="code">{lot.part.number}</span> {lot.part.description}
                <span className="soft"> · {lot.position}</span>
              </p>
              <p className="small soft">
                <Link href={`/lots/${lot.lotId}`}>{lot.lotCode}</Link>
                {lot.expiresOn ? (
                  <>
                    , not to be used from <DateText date={lot.expiresOn} /> on
                  </>
                ) : null}
              </p>
            </div>
            {kit.state === 'open' ? (
              <LotButtons {...{ lot, mayMove }} onAsk={(what) => setAsked({ what, lot })} />
            ) : null}
          </li>
        ))}
      </ul>
      {asked?.what === 'return' ? <ReturnDialog kitId={kit.id} lot={asked.lot} onClose={close} /> : null}
      {asked?.what === 'swap' ? <SwapDialog kitId={kit.id} lot={asked.lot} onClose={close} /> : null}
      {asked?.what === 'hold' ? <HoldFromTrayDialog kitId={kit.id} lot={asked.lot} onClose={close} /> : null}
      {asked?.what === 'reject' ? <RejectFromTrayDialog kitId={kit.id} lot={asked.lot} onClose={close} /> : null}
      {asked?.what === 'scrap' ? <ScrapFromTrayDialog kitId={kit.id} lot={asked.lot} onClose={close} /> : null}
    </>
  );
}
