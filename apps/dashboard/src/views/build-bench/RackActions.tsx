import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useState } from 'react';
import type { Placed } from '../../features/build/build-sheet.ts';
import { PassRackPart } from '../../features/build/pass-rack-part.tsx';
import { ReplaceRackPart } from '../../features/build/replace-rack-part.tsx';
import { useMay, useMe } from '../../features/people/me.ts';
import { Button } from '../../ui/Button.tsx';

/** What can be done with one old part: pass it for reuse (a signature), or replace it. */
export function RackActions({ kitId, lot }: { kitId: string; lot: Placed }) {
  const me = useMe();
  const mayPass = useMay(kitsOperations.passRackPart);
  const mayReplace = useMay(kitsOperations.replaceRackPart);
  const [asking, setAsking] = useState<'pass' | 'replace'>();
  const close = () => setAsking(undefined);
  return (
    <>
      {mayPass && lot.state !== 'accepted' ? (
        <Button weight="quiet" onPress={() => setAsking('pass')}>
          Pass
        </Button>
      ) : null}
      {mayReplace ? (
        <Button weight="quiet" onPress={() => setAsking('replace')}>
          Replace
        </Button>
      ) : null}
      {asking === 'pass' ? <PassRackPart kitId={kitId} lot={lot} signer={me} onClose={close} /> : null}
      {asking === 'replace' ? <ReplaceRackPart kitId={kitId} lot={lot} onClose={close} /> : null}
    </>
  );
}
