import { useToday } from '../../format/use-today.ts';
import { Dialog } from '../../ui/Dialog.tsx';
import { useNavigateTo } from '../../ui/Link.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Wanted } from './order-draft.ts';
import { RaiseOrderForm } from './raise-order.tsx';

/** An order for what was ticked in a list: raised here, then opened. */
export function OrderFrom(props: {
  supplier: { readonly id: string; readonly name: string } | null;
  wanted: readonly Wanted[];
  onClose: () => void;
}) {
  const today = useToday();
  const navigate = useNavigateTo();
  const { supplier, wanted, onClose } = props;
  return (
    <Dialog title={`Order from ${supplier?.name ?? 'a supplier'}`} width="wide" isOpen onClose={onClose}>
      <RaiseOrderForm
        supplierId={supplier?.id ?? null}
        wanted={wanted}
        today={today}
        onCancel={onClose}
        onRaised={({ id, number }) => {
          say(`${number} is raised; the kits count on it from now on.`);
          onClose();
          navigate(`/orders/${id}`);
        }}
      />
    </Dialog>
  );
}
