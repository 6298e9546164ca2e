import { orderOperations } from '@hubwright/contracts/purchasing/order-operations';
import { z } from 'zod';
import { usePages } from '../../api/pages.ts';
import { ChaseTable } from '../../features/purchasing/ChaseTable.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { FilterField } from '../../ui/FilterField.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';

const address = z.object({ search: z.string().catch('') });

/** Lines that are late, promised late, or that the supplier has not answered; what holds up a kit stands first. */
export function ChasePage() {
  const [{ search }, setAddress] = useAddress(address);
  const pages = usePages(orderOperations.listToChase, search === '' ? {} : { search });
  return (
    <div className="sheet">
      <PagesFrame of={pages}>
        <ChaseTable
          rows={pages.rows}
          tools={
            <FilterField
              label="Order, part or supplier"
              value={search}
              onChange={(text) => setAddress({ search: text })}
            />
          }
        />
      </PagesFrame>
    </div>
  );
}
