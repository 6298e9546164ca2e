import type { ReactNode } from 'react';
import { Dialog as AriaDialog, Button, Heading, Modal, ModalOverlay } from 'react-aria-components';

export interface DialogProps {
  title: string;
  isOpen: boolean;
  onClose: () => void;
  children: ReactNode;
  /** `wide` for forms of two columns and for tables. */
  width?: 'narrow' | 'wide';
  /** For what interrupts and must be answered. */
  isAlert?: boolean;
}

/** A sheet laid over the bench. Escape and the corner button close it; a touch outside does not, so nothing typed is lost. */
export function Dialog({ title, isOpen, onClose, children, width = 'narrow', isAlert = false }: DialogProps) {
  return (
    <ModalOverlay isOpen={isOpen} onOpenChange={(open) => !open && onClose()} className="veil">
      <Modal className={`modal ${width}`}>
        <AriaDialog role={isAlert ? 'alertdialog' : 'dialog'} className="dialog">
          <header className="dialog-head">
            <Heading slot="title" level={2}>
              {title}
            </Heading>
            <Button className="button quiet icon" aria-label="Close" onPress={onClose}>
              <svg viewBox="0 0 16 16" aria-hidden="true">
                <path d="M3 3l10 10M13 3 3 13" />
              </svg>
            </Button>
          </header>
          {children}
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}
