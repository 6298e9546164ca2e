import { quantityText } from '@hubwright/contracts/inventory/quantity';
import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { countOf } from '../../format/numbers.ts';
import { CheckboxList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { type Signature, SignatureDialog } from '../../ui/SignatureDialog.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import styles from './build.module.css';
import type { Placed } from './build-sheet.ts';

function words(lot: Placed): string {
  return `${quantityText(lot.quantity, lot.part.issueUnit)} ${lot.part.number} ${lot.part.description}, ${lot.position}`;
}

interface Props {
  kitId: string;
  /** What lies in the rack uninspected and may go back in. */
  lots: readonly Placed[];
  signer: Signer;
  onClose: () => void;
}

/** Signs each chosen part: every part gets its own record, in the order shown, until one is refused. */
function useSignEach({ kitId, onClose }: Props) {
  const pass = useCommand(kitsOperations.passRackPart);
  const [passed, setPassed] = useState<readonly string[]>([]);
  const sign = async (lots: readonly Placed[], signature: Signature) => {
    try {
      for (const lot of lots) {
        await pass.mutateAsync({ input: { kitId, lotId: lot.lotId, note: '', signature } });
        setPassed((before) => [...before, lot.lotId]);
      }
    } catch {
      return; // the refusal is shown by the dialog; what was signed before it stays signed
    }
    say(`${countOf(lots.length, 'part')} may go back in.`);
    onClose();
  };
  return { pass, passed, sign };
}

/** The inspector ticks the parts looked at and passes them for reuse with one PIN. Nothing is ticked beforehand. */
export function PassRackParts(props: Props) {
  const [chosen, setChosen] = useState<string[]>([]);
  const [isSigning, setSigning] = useState(false);
  const { pass, passed, sign } = useSignEach(props);
  const left = props.lots.filter((lot) => chosen.includes(lot.lotId) && !passed.includes(lot.lotId));
  if (isSigning) {
    return (
      <SignatureDialog
        isOpen
        onClose={props.onClose}
        meaning={kitsOperations.passRackPart.signs ?? ''}
        signer={props.signer}
        problem={pass.error}
        isPending={pass.isPending}
        onSign={(signature) => void sign(left, signature)}
      >
        <ul className="lines small">
          {left.map((lot) => (
            <li key={lot.lotId}>{words(lot)}</li>
          ))}
        </ul>
      </SignatureDialog>
    );
  }
  return (
    <Dialog title="Which parts did you inspect and pass?" isOpen onClose={props.onClose} width="wide">
      <CommandForm
        problem={null}
        isPending={false}
        submit={chosen.length === 0 ? 'Go on to sign' : `Go on to sign ${countOf(chosen.length, 'part')}`}
        onSubmit={() => chosen.length > 0 && setSigning(true)}
        onCancel={props.onClose}
      >
        <div className={styles.ticks}>
          <CheckboxList
            label="Inspected to the current manual revision and good to go back in this unit"
            value={chosen}
            onChange={setChosen}
            choices={props.lots.map((lot) => ({ value: lot.lotId, text: words(lot) }))}
            isRequired
          />
        </div>
      </CommandForm>
    </Dialog>
  );
}
