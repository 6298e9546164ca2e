import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import type { Placed } from '../../features/build/build-sheet.ts';
import { ReplaceRackPart } from '../../features/build/replace-rack-part.tsx';
import { ReturnDialog } from '../../features/kits/return-from-tray.tsx';
import { ScrapFromTrayDialog } from '../../features/kits/scrap-from-tray.tsx';
import { Button } from '../../ui/Button.tsx';

/** What was not needed goes from the tray back to its bin; what was dropped or damaged is scrapped. */
export function TrayLotActions({ kitId, lot }: { kitId: string; lot: Placed }) {
  const mayReturn = useMay(kitsOperations.returnFromTray);
  const [asking, setAsking] = useState<'return' | 'scrap'>();
  const close = () => setAsking(undefined);
  if (!mayReturn) return null;
  return (
    <>
      <Button weight="quiet" onPress={() => setAsking('return')} aria-label={`Return ${lot.lotCode} to its bin`}>
        Return
      </Button>
      <Button weight="quiet" onPress={() => setAsking('scrap')} aria-label={`Damaged: scrap pieces of ${lot.lotCode}`}>
        Damaged
      </Button>
      {asking === 'return' ? <ReturnDialog kitId={kitId} lot={lot} onClose={close} /> : null}
      {asking === 'scrap' ? <ScrapFromTrayDialog kitId={kitId} lot={lot} onClose={close} /> : null}
    </>
  );
}

/** A worn part of the rack is replaced: the kit then needs a new one at its position. */
export function RackLotActions({ kitId, lot }: { kitId: string; lot: Placed }) {
  const mayReplace = useMay(kitsOperations.replaceRackPart);
  const [isOpen, setOpen] = useState(false);
  if (!mayReplace) return null;
  return (
    <>
      <Button weight="quiet" onPress={() => setOpen(true)} aria-label={`Replace ${lot.lotCode}`}>
        Replace
      </Button>
      {isOpen ? <ReplaceRackPart kitId={kitId} lot={lot} onClose={() => setOpen(false)} /> : null}
    </>
  );
}
