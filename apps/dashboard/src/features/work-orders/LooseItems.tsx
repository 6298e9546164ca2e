import { CheckboxList } from '../../ui/Checkbox.tsx';
import type { WorkOrder } from './work-orders.ts';

/** Loose items that still have to go back, each to be ticked by whoever has it in hand. */
export function LooseItemTicks(props: {
  order: WorkOrder;
  name: string;
  label: string;
  value: readonly string[];
  onChange: (ids: string[]) => void;
}) {
  const left = props.order.looseItems.filter((item) => item.returnedAt === null);
  if (left.length === 0) return null;
  return (
    <CheckboxList
      name={props.name}
      label={props.label}
      hint="Tick each one you have in hand"
      value={props.value}
      onChange={props.onChange}
      choices={left.map((item) => ({ value: item.id, text: `${item.quantity} × ${item.description}` }))}
    />
  );
}
