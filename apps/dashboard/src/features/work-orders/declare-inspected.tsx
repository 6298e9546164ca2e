import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { useCommand } from '../../api/command.ts';
import { countOf } from '../../format/numbers.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { say } from '../../ui/toasts.tsx';
import type { WorkOrder } from './work-orders.ts';

/** Evaluation is complete: from here the desk writes the firm quote. */
export function DeclareInspected({ order, onClose }: { order: WorkOrder; onClose: () => void }) {
  const declare = useCommand(workOrderOperations.declareInspected);
  const unsigned = order.travelers.filter((traveler) => traveler.signed < traveler.steps && !traveler.disposition);
  const undecided = order.findings.filter((finding) => finding.disposition === null);
  return (
    <Dialog title={`Evaluation of ${order.number} is complete`} isOpen onClose={onClose}>
      <CommandForm
        problem={declare.error}
        isPending={declare.isPending}
        submit="Declare it inspected"
        onCancel={onClose}
        onSubmit={() =>
          declare.mutate(
            { input: { workOrderId: order.id }, version: order.version },
            {
              onSuccess: () => {
                say(`${order.number} is inspected; the firm quote is due.`);
                onClose();
              },
            },
          )
        }
      >
        <p>
          {countOf(order.findings.length, 'finding')} raised so far. After this the front desk writes the firm quote;
          what is found later is over and above.
        </p>
        {unsigned.length > 0 ? (
          <p>
            Steps still open on:{' '}
            {unsigned.map(({ number, signed, steps }) => `${number} (${signed} of ${steps} signed)`).join(', ')}.
          </p>
        ) : null}
        {undecided.length > 0 ? (
          <p>Still without a disposition: {undecided.map((finding) => finding.number).join(', ')}.</p>
        ) : null}
      </CommandForm>
    </Dialog>
  );
}
