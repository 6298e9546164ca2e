import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { z } from 'zod';
import { usePages } from '../../api/pages.ts';
import { ExpiringTable } from '../../features/inventory/ExpiringTable.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { InlineSelect } from '../../ui/InlineSelect.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';

const spans = ['30', '90', '180', '365'] as const;
const address = z.object({ days: z.enum(spans).catch('90') });
const choices = spans.map((value) => ({ value, text: `${value} days` }));

/** What must be used first, soonest first, with what has already expired on top. */
export function ExpiringPage() {
  const [{ days }, setAddress] = useAddress(address);
  const stock = usePages(inventoryOperations.expiringStock, { withinDays: Number(days) });
  return (
    <div className="sheet">
      <PagesFrame of={stock}>
        <ExpiringTable
          rows={stock.rows}
          tools={
            <InlineSelect
              label="Expires within"
              value={days}
              onChange={(value) => setAddress({ days: value })}
              choices={choices}
              isRequired
            />
          }
        />
      </PagesFrame>
    </div>
  );
}
