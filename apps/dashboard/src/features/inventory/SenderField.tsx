import { supplierOperations } from '@hubwright/contracts/purchasing/supplier-operations';
import { useQuery } from '@tanstack/react-query';
import { queryFor } from '../../api/query.ts';
import { Select } from '../../ui/Select.tsx';

/** Whom a box without an order came from; its approval is looked at like that of any order. */
export function SenderField(props: { value: string | null; onChange: (supplierId: string | null) => void }) {
  const suppliers = useQuery(queryFor(supplierOperations.listSuppliers, { limit: 200 })).data?.rows ?? [];
  return (
    <Select
      {...props}
      name="supplierId"
      label="Which supplier sent it"
      placeholder="Not known"
      choices={suppliers.map(({ id, name }) => ({ value: id, text: name }))}
    />
  );
}
