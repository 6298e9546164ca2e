import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { supplierOperations } from '@hubwright/contracts/purchasing/supplier-operations';
import { useState } from 'react';
import { z } from 'zod';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { AddSupplierDialog } from '../../features/purchasing/add-supplier.tsx';
import { OrderTable } from '../../features/purchasing/OrderTable.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { Button, LinkButton } from '../../ui/Button.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { FilterField } from '../../ui/FilterField.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';

const address = z.object({
  search: z.string().catch(''),
  late: z.enum(['', 'true']).catch(''),
  all: z.enum(['', 'true']).catch(''),
});

/** Purchase orders: open ones first in sight, late ones by one touch. */
export function OrdersPage() {
  const [{ search, late, all }, setAddress] = useAddress(address);
  const orders = usePages(purchasingOperations.listOrders, {
    ...(search === '' ? {} : { search }),
    ...(all === '' ? { state: 'ordered' as const } : {}),
    ...(late === '' ? {} : { late: 'true' as const }),
  });
  const mayAdd = useMay(supplierOperations.addSupplier);
  const mayOrder = useMay(purchasingOperations.raiseOrder);
  const [isAdding, setAdding] = useState(false);
  return (
    <div className="sheet">
      <PagesFrame of={orders}>
        <OrderTable
          rows={orders.rows}
          tools={
            <>
              <FilterField label="Order or supplier" value={search} onChange={(text) => setAddress({ search: text })} />
              <Checkbox isSelected={late !== ''} onChange={(is) => setAddress({ late: is ? 'true' : '' })}>
                Only late ones
              </Checkbox>
              <Checkbox isSelected={all !== ''} onChange={(is) => setAddress({ all: is ? 'true' : '' })}>
                Also those done
              </Checkbox>
              {mayOrder ? <LinkButton href="/shortages">Order what is short</LinkButton> : null}
              {mayAdd ? (
                <Button weight="quiet" onPress={() => setAdding(true)}>
                  Add a supplier
                </Button>
              ) : null}
            </>
          }
        />
      </PagesFrame>
      {isAdding ? <AddSupplierDialog onClose={() => setAdding(false)} /> : null}
    </div>
  );
}
