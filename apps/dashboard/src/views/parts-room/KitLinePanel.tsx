import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { FreezeDialog } from '../../features/kits/freeze-reservation.tsx';
import type { Kit, KitLine } from '../../features/kits/kit-detail.ts';
import { LineSheet } from '../../features/kits/LineSheet.tsx';
import { ReleaseDialog } from '../../features/kits/release-reservation.tsx';
import { ReserveLine } from '../../features/kits/reserve-line.tsx';
import { Button, LinkButton } from '../../ui/Button.tsx';
import { Link } from '../../ui/Link.tsx';

type Promised = KitLine['reservations'][number];

/** What is promised to the line, each to be given free again. */
function Promises({ kit, line }: { kit: Kit; line: KitLine }) {
  const [released, setReleased] = useState<Promised>();
  const [frozen, setFrozen] = useState<Promised>();
  if (line.reservations.length === 0) return null;
  return (
    <section>
      <h3>Promised to it</h3>
      <ul className="lines">
        {line.reservations.map((each) => (
          <li key={each.id}>
            <span>
              {each.quantity} of <Link href={`/lots/${each.lotId}`}>{each.lotCode}</Link> in {each.bin}
              {each.frozen ? (
                <span className="small soft">
                  {' '}
                  · frozen by {each.frozen.by}: {each.frozen.reason}
                </span>
              ) : null}
            </span>
            <span className="row tight">
              <Button
                weight="quiet"
                onPress={() => setFrozen(each)}
                aria-label={`${each.frozen ? 'Unfreeze' : 'Freeze'} ${each.lotCode}`}
              >
                {each.frozen ? 'Unfreeze' : 'Freeze'}
              </Button>
              {each.frozen ? null : (
                <Button weight="quiet" onPress={() => setReleased(each)} aria-label={`Give free ${each.lotCode}`}>
                  Give free
                </Button>
              )}
            </span>
          </li>
        ))}
      </ul>
      {frozen ? <FreezeDialog kitId={kit.id} promised={frozen} onClose={() => setFrozen(undefined)} /> : null}
      {released ? (
        <ReleaseDialog
          kitId={kit.id}
          promised={{ reservationId: released.id, lotCode: released.lotCode, quantity: released.quantity }}
          onClose={() => setReleased(undefined)}
        />
      ) : null}
    </section>
  );
}

/** One line of the kit beside the list. */
export function KitLinePanel({ kit, line }: { kit: Kit; line: KitLine }) {
  const mayReserve = useMay(kitsOperations.reserveLine) && kit.state === 'open';
  return (
    <div className="sheet">
      <LineSheet
        line={line}
        actions={
          mayReserve ? (
            <>
              <Promises kit={kit} line={line} />
              {line.toPull > 0 ? <ReserveLine kitId={kit.id} line={line} /> : null}
              {line.short > 0 ? <LinkButton href={`/shortages?kit=${kit.code}`}>Order what is short</LinkButton> : null}
            </>
          ) : null
        }
      />
    </div>
  );
}
