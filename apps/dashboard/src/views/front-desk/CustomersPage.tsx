import { customerOperations } from '@hubwright/contracts/customers/operations';
import { useState } from 'react';
import { z } from 'zod';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { AddCustomer } from '../../features/customers/add-customer.tsx';
import { CustomerTable } from '../../features/customers/CustomerTable.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { Button } from '../../ui/Button.tsx';
import { FilterField } from '../../ui/FilterField.tsx';
import { useNavigateTo } from '../../ui/Link.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';

const address = z.object({ search: z.string().catch('') });

export function CustomersPage() {
  const [{ search }, setAddress] = useAddress(address);
  const customers = usePages(customerOperations.listCustomers, search === '' ? {} : { search });
  const mayAdd = useMay(customerOperations.addCustomer);
  const [isAdding, setAdding] = useState(false);
  const navigate = useNavigateTo();
  return (
    <div className="sheet">
      <PagesFrame of={customers}>
        <CustomerTable
          rows={customers.rows}
          tools={
            <>
              <FilterField label="Name or code" value={search} onChange={(text) => setAddress({ search: text })} />
              {mayAdd ? <Button onPress={() => setAdding(true)}>Add a customer</Button> : null}
            </>
          }
        />
      </PagesFrame>
      {isAdding ? (
        <AddCustomer onClose={() => setAdding(false)} onAdded={(customerId) => navigate(`/customers/${customerId}`)} />
      ) : null}
    </div>
  );
}
