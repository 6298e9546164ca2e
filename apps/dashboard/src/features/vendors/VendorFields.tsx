import { formatDate } from '../../format/dates.ts';
import { DateField } from '../../ui/DateField.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import type { Vendor } from './vendors.ts';

export const noVendor = { supplierId: null as string | null, purchaseOrder: '', paperDue: '', expectedOn: '' };

const approval = ({ approvedUntil }: Vendor, today: string) =>
  approvedUntil && approvedUntil >= today ? `approved until ${formatDate(approvedUntil)}` : 'not approved today';

/** To which vendor, on which order of ours, what paper has to come back, and until when. */
export function VendorFields(props: {
  vendors: readonly Vendor[];
  today: string;
  value: typeof noVendor;
  onChange: (value: typeof noVendor) => void;
}) {
  const { vendors, today, value, onChange } = props;
  const set = (name: keyof typeof noVendor) => (text: string | null) => onChange({ ...value, [name]: text ?? '' });
  return (
    <>
      <Select
        name="supplierId"
        label="Vendor"
        value={value.supplierId}
        onChange={set('supplierId')}
        choices={vendors.map((each) => ({ value: each.id, text: `${each.name} (${approval(each, today)})` }))}
        isRequired
      />
      <TextField
        name="purchaseOrder"
        label="Purchase order"
        value={value.purchaseOrder}
        onChange={set('purchaseOrder')}
        isRequired
      />
      <TextField
        name="paperDue"
        label="Paper that must come back"
        hint="For example: certificate with the bake chart"
        value={value.paperDue}
        onChange={set('paperDue')}
        isRequired
      />
      <DateField
        name="expectedOn"
        label="Expected back"
        value={value.expectedOn}
        onChange={set('expectedOn')}
        isRequired
      />
    </>
  );
}
