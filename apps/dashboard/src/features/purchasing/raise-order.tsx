import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { formatDate } from '../../format/dates.ts';
import { Button } from '../../ui/Button.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { type DraftLine, draftOf, lineToSend, type Wanted } from './order-draft.ts';
import { suppliersQuery } from './orders.ts';

export interface RaiseOrderProps {
  supplierId: string | null;
  wanted: readonly Wanted[];
  today: string;
  onRaised: (order: { id: string; number: string }) => void;
  onCancel: () => void;
}

interface LineFieldsProps {
  at: number;
  line: DraftLine;
  onChange: (changes: Partial<DraftLine>) => void;
  onDrop?: (() => void) | undefined;
}

function LineFields({ at, line, onChange, onDrop }: LineFieldsProps) {
  return (
    <fieldset className="field-group">
      <legend>
        {line.number} <span className="soft small">{line.description}</span>
      </legend>
      <div className="field-grid">
        <DecimalField
          name={`lines/${at}/quantity`}
          label="How many"
          hint={line.packSize > 1 ? `Packs of ${line.packSize}` : undefined}
          unit={line.issueUnit}
          decimals={0}
          value={line.quantity}
          onChange={(quantity) => onChange({ quantity })}
          isRequired
        />
        <DateField
          name={`lines/${at}/dueOn`}
          label="Due"
          value={line.dueOn}
          onChange={(dueOn) => onChange({ dueOn })}
          isRequired
        />
        <DecimalField
          name={`lines/${at}/unitPrice`}
          label="Unit price"
          value={line.unitPrice}
          onChange={(unitPrice) => onChange({ unitPrice })}
        />
        {onDrop ? (
          <Button weight="quiet" onPress={onDrop} aria-label={`Leave out ${line.number}`}>
            Leave out
          </Button>
        ) : null}
      </div>
    </fieldset>
  );
}

/** An order to one supplier, filled in from what is short: number in whole packs, date by the usual lead time. */
export function RaiseOrderForm({ wanted, today, onRaised, onCancel, ...given }: RaiseOrderProps) {
  const raise = useCommand(purchasingOperations.raiseOrder);
  const suppliers = useQuery(suppliersQuery).data?.rows ?? [];
  const [supplierId, setSupplierId] = useState(given.supplierId);
  const [lines, setLines] = useState(() => wanted.map((each) => draftOf(each, today)));
  const [note, setNote] = useState('');
  const [takesLess, setTakesLess] = useState(false);
  const change = (at: number, changes: Partial<DraftLine>) =>
    setLines(lines.map((line, place) => (place === at ? { ...line, ...changes } : line)));
  const send = () =>
    raise.mutate(
      { input: { supplierId: supplierId ?? '', note, takesLess, lines: lines.map(lineToSend) } },
      { onSuccess: ({ id, number }) => onRaised({ id, number }) },
    );
  const approval = ({ approvedUntil }: { approvedUntil: string | null }) =>
    approvedUntil && approvedUntil >= today ? `approved until ${formatDate(approvedUntil)}` : 'not approved today';
  return (
    <CommandForm
      problem={raise.error}
      isPending={raise.isPending}
      submit="Raise the order"
      onSubmit={send}
      onCancel={onCancel}
    >
      <Select
        name="supplierId"
        label="Supplier"
        placeholder="Choose a supplier"
        value={supplierId}
        onChange={setSupplierId}
        choices={suppliers.map((each) => ({ value: each.id, text: `${each.name} (${approval(each)})` }))}
        isRequired
      />
      {lines.map((line, at) => (
        <LineFields
          key={line.partId}
          at={at}
          line={line}
          onChange={(changes) => change(at, changes)}
          onDrop={lines.length > 1 ? () => setLines(lines.filter((_, place) => place !== at)) : undefined}
        />
      ))}
      <TextField name="note" label="Note to the supplier" lines={2} value={note} onChange={setNote} />
      {raise.error?.type === 'order-too-small' ? (
        <Checkbox isSelected={takesLess} onChange={setTakesLess}>
          The supplier takes it all the same
        </Checkbox>
      ) : null}
    </CommandForm>
  );
}
