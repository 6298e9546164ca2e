import type { EquipmentKind } from '@hubwright/contracts/manuals/words';
import { bakeOperations } from '@hubwright/contracts/work-orders/bake-operations';
import type { BakeClock } from '@hubwright/contracts/work-orders/bake-shapes';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { Button } from '../../ui/Button.tsx';
import { BeginBake } from './begin-bake.tsx';
import { WithdrawBake } from './withdraw-bake.tsx';

/** A step alone, or an open load. */
export type Which = { readonly stepId: string } | { readonly loadId: string };

interface BakeActionsProps {
  readonly which: Which;
  readonly clock: BakeClock;
  readonly equipmentKind?: EquipmentKind | null;
  /** What goes into the oven, in words. */
  readonly name: string;
}

/** Into the oven now; or, entered in error, out of it again with the reason. */
export function BakeActions({ which, clock, equipmentKind = null, name }: BakeActionsProps) {
  const mayBegin = useMay(bakeOperations.beginBake);
  const [isOpen, setOpen] = useState(false);
  const close = () => setOpen(false);
  if (!mayBegin) return null;
  return (
    <>
      {clock.begun ? (
        <Button weight="quiet" onPress={() => setOpen(true)} aria-label={`Entered in error: ${name}`}>
          Entered in error
        </Button>
      ) : (
        <Button onPress={() => setOpen(true)} aria-label={`It goes into the oven: ${name}`}>
          It goes into the oven
        </Button>
      )}
      {isOpen && clock.begun ? <WithdrawBake which={which} name={name} onClose={close} /> : null}
      {isOpen && !clock.begun ? (
        <BeginBake which={which} clock={clock} equipmentKind={equipmentKind} name={name} onClose={close} />
      ) : null}
    </>
  );
}
