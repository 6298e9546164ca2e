import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { say } from '../../ui/toasts.tsx';
import type { QuoteRow } from './quotes.ts';

/** Every reminder went out and nothing came back: work is held for the customer. */
export function RecordSilence({ quote, onClose }: { quote: QuoteRow; onClose: () => void }) {
  const record = useCommand(quoteOperations.recordSilence);
  return (
    <Dialog title={`No answer to ${quote.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={record.error}
        isPending={record.isPending}
        submit="Record the silence"
        onCancel={onClose}
        onSubmit={() =>
          record.mutate(
            { input: { quoteId: quote.id }, version: quote.version },
            {
              onSuccess: () => {
                say(`${quote.workOrder.number} is held for the customer.`);
                onClose();
              },
            },
          )
        }
      >
        <p>The work order is held until the customer answers. A later yes or no lifts the hold.</p>
      </CommandForm>
    </Dialog>
  );
}
