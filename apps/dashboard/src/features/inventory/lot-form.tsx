import type { ReactNode } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import type { Lot } from './lots.ts';

export interface LotDialogProps {
  lot: Lot;
  onClose: () => void;
}

/** A dialog around one command about one lot. */
export function LotForm(props: {
  title: string;
  command: { error: ProblemError | null; isPending: boolean };
  submit: string;
  onSubmit: () => void;
  onClose: () => void;
  children: ReactNode;
}) {
  return (
    <Dialog title={props.title} isOpen onClose={props.onClose}>
      <CommandForm
        problem={props.command.error}
        isPending={props.command.isPending}
        submit={props.submit}
        onSubmit={props.onSubmit}
        onCancel={props.onClose}
      >
        {props.children}
      </CommandForm>
    </Dialog>
  );
}

export interface TextProps {
  value: string;
  onChange: (text: string) => void;
}

/** A bin by the code that stands on it; a scan types it in. */
export function BinField(
  props: TextProps & { name: string; label: string; hint?: string | undefined; isRequired?: boolean },
) {
  const { hint, ...rest } = props;
  return <TextField {...rest} hint={hint ?? 'Scan the bin or type its code'} size={12} isCode />;
}

/** Whole pieces of the smallest issue unit. */
export function PiecesField(props: TextProps & { lot: Lot; name?: string; label?: string; hint?: string }) {
  const { lot, name = 'quantity', label = 'How many', ...rest } = props;
  return <DecimalField {...rest} name={name} label={label} unit={lot.part.issueUnit} decimals={0} isRequired />;
}
