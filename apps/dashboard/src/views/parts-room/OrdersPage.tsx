import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { z } from 'zod';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { OrderTable } from '../../features/purchasing/OrderTable.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { LinkButton } from '../../ui/Button.tsx';
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
  const mayOrder = useMay(purchasingOperations.raiseOrder);
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
              {mayOrder ? <LinkButton href="/buying">Order what is needed</LinkButton> : null}
            </>
          }
        />
      </PagesFrame>
    </div>
  );
}
