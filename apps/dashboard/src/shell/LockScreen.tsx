import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { useLocation } from '@tanstack/react-router';
import { useState } from 'react';
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { useCommand } from '../api/command.ts';
import { useMe } from '../api/me.ts';
import { SwitchPersonForm } from '../features/people/switch-person.tsx';
import { UnlockSessionForm } from '../features/people/unlock-session.tsx';
import { useNavigateTo } from '../ui/Link.tsx';
import { viewAt } from '../views/navigation.ts';
import { useIdle } from './idle.ts';

/**
 * Over everything once nobody touched the device for a while: who works here and at what, and nothing else. The same person
 * goes on where they were, with what they typed; another takes over by badge and begins at their own view.
 */
export function LockScreen() {
  const me = useMe();
  const navigate = useNavigateTo();
  const { pathname } = useLocation();
  const { mutate: lock } = useCommand(accessOperations.lockSession);
  const [badge, setBadge] = useState<string>();
  useIdle(me.shop.lockAfterMinutes, () => lock({ input: {} }));
  const switched = () => {
    setBadge(undefined);
    navigate('/');
  };
  return (
    <ModalOverlay isOpen={me.locked} isKeyboardDismissDisabled className="veil locked">
      <Modal className="modal narrow">
        <AriaDialog role="alertdialog" className="dialog">
          <header className="dialog-head">
            <Heading slot="title" level={2}>
              Locked: {me.displayName}
            </Heading>
          </header>
          <div className="stack">
            <p className="soft">At {viewAt(pathname)?.title ?? 'a page'}. What was typed is still there.</p>
            {badge ? (
              <SwitchPersonForm badge={badge} onSwitched={switched} onCancel={() => setBadge(undefined)} />
            ) : (
              <>
                <UnlockSessionForm key={me.id} me={me} onBadge={setBadge} />
                <p className="soft small">Someone else? Scan your badge.</p>
              </>
            )}
          </div>
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}
