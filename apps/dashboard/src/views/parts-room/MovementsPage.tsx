import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { z } from 'zod';
import { usePages } from '../../api/pages.ts';
import { flows } from '../../features/inventory/behind.ts';
import { MovementTable } from '../../features/inventory/MovementTable.tsx';
import { DateText } from '../../format/values.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { InlineSelect } from '../../ui/InlineSelect.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';

const day = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$|^$/)
  .catch('');
const address = z.object({
  part: z.string().catch(''),
  partId: z.uuid().or(z.literal('')).catch(''),
  orderLineId: z.uuid().or(z.literal('')).catch(''),
  flow: z.enum(flows).catch('all'),
  since: day,
  before: day,
});
const words = {
  all: 'every movement',
  receipts: 'from and to suppliers',
  issues: 'to the work and back',
  counts: 'by counts',
  scrap: 'to the scrap',
} as const;
const choices = flows.map((value) => ({ value, text: words[value] }));

/** The movements behind a number: which part, which way, in which time. */
export function MovementsPage() {
  const [{ part, partId, orderLineId, flow, since, before }, setAddress] = useAddress(address);
  const movements = usePages(inventoryOperations.listMovements, {
    ...(partId ? { partId } : {}),
    ...(orderLineId ? { orderLineId } : {}),
    ...(flow === 'all' ? {} : { flow }),
    ...(since ? { since } : {}),
    ...(before ? { before } : {}),
  });
  return (
    <>
      <ViewHead
        title={part ? `Movements of ${part}` : 'Movements'}
        question={part ? `Which movements of ${part} are behind the number?` : 'What has moved, and why?'}
      />
      <div className="sheet stack">
        <div className="row">
          <InlineSelect
            label="Show"
            value={flow}
            onChange={(value) => setAddress({ flow: value })}
            choices={choices}
            isRequired
          />
          {since ? (
            <span>
              from <DateText date={since} />
            </span>
          ) : null}
          {before ? (
            <span>
              before <DateText date={before} />
            </span>
          ) : null}
        </div>
        <PagesFrame of={movements}>
          <MovementTable caption={part ? `Movements of ${part}` : 'Movements'} movements={movements.rows} />
        </PagesFrame>
      </div>
    </>
  );
}
