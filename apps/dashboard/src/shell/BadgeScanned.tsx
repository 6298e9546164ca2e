import { SwitchPersonForm } from '../features/people/switch-person.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { useNavigateTo } from '../ui/Link.tsx';

/** A badge was scanned on some page: its person takes over and begins at their own view. */
export function BadgeScanned({ badge, onClose }: { badge: string | undefined; onClose: () => void }) {
  const navigate = useNavigateTo();
  const switched = () => {
    onClose();
    navigate('/');
  };
  return (
    <Dialog title="Who takes over?" isOpen={badge !== undefined} onClose={onClose}>
      {badge ? <SwitchPersonForm badge={badge} onSwitched={switched} onCancel={onClose} /> : null}
    </Dialog>
  );
}
