import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useState } from 'react';
import { useMay, useMe } from '../../api/me.ts';
import { type BuildSheet, rackStanding } from '../../features/build/build-sheet.ts';
import { ClearRack } from '../../features/build/clear-rack.tsx';
import { PassRackParts } from '../../features/build/pass-rack-parts.tsx';
import { Button } from '../../ui/Button.tsx';

/** What can be done with the rack as a whole: pass what was inspected (a signature), and clear what does not go back. */
export function RackActions({ sheet, kitId }: { sheet: BuildSheet; kitId: string }) {
  const me = useMe();
  const mayPass = useMay(kitsOperations.passRackPart);
  const mayClear = useMay(kitsOperations.clearRack);
  const [asking, setAsking] = useState<'pass' | 'clear'>();
  const close = () => setAsking(undefined);
  const waiting = sheet.rack.filter((lot) => rackStanding(sheet, lot) === 'not-inspected');
  return (
    <div className="row">
      {mayPass && waiting.length > 0 ? <Button onPress={() => setAsking('pass')}>Pass inspected parts</Button> : null}
      {mayClear && sheet.rack.length > 0 ? (
        <Button weight="quiet" onPress={() => setAsking('clear')}>
          Clear what does not go back
        </Button>
      ) : null}
      {asking === 'pass' ? <PassRackParts kitId={kitId} lots={waiting} signer={me} onClose={close} /> : null}
      {asking === 'clear' ? <ClearRack kitId={kitId} onClose={close} /> : null}
    </div>
  );
}
