import { allocationOperations } from '@hubwright/contracts/kits/allocation-operations';
import { useCommand } from '../../api/command.ts';
import { countOf } from '../../format/numbers.ts';
import { Button } from '../../ui/Button.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { say } from '../../ui/toasts.tsx';
import { acceptance, type KitToFill, mostAtOnce } from './kits-to-fill.ts';

/** Promises the proposed lots to the chosen kits, all as shown or none. */
export function AcceptFill({ kits, onAccepted }: { kits: readonly KitToFill[]; onAccepted: () => void }) {
  const accept = useCommand(allocationOperations.acceptFill);
  const count = Math.min(kits.length, mostAtOnce);
  const send = () =>
    accept.mutate(
      { input: acceptance(kits) },
      {
        onSuccess: ({ kits: filled, lines }) => {
          say(`${countOf(lines, 'line')} of ${countOf(filled, 'kit')} promised: pull them by scan.`);
          onAccepted();
        },
      },
    );
  return (
    <>
      <Button weight="next" isDisabled={count === 0} isPending={accept.isPending} onPress={send}>
        Promise the shelf to {countOf(count, 'kit')}
      </Button>
      {accept.error ? <Refusal problem={accept.error} /> : null}
    </>
  );
}
