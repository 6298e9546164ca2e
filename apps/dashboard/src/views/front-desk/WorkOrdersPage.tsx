import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import {
  consentSchema,
  consents,
  consentTitles,
  stageSchema,
  stages,
  stageTitles,
} from '@hubwright/contracts/work-orders/states';
import { z } from 'zod';
import { usePages } from '../../api/pages.ts';
import { OrderTable } from '../../features/work-orders/OrderTable.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { FilterField } from '../../ui/FilterField.tsx';
import { InlineSelect } from '../../ui/InlineSelect.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';

const address = z.object({
  search: z.string().catch(''),
  stage: z.union([stageSchema, z.enum(['open', 'all'])]).catch('open'),
  consent: z.union([consentSchema, z.literal('any')]).catch('any'),
  customerId: z.uuid().or(z.literal('')).catch(''),
  held: z.enum(['', 'true']).catch(''),
});

const stageChoices = [
  { value: 'open' as const, text: 'Not closed' },
  { value: 'all' as const, text: 'All, closed too' },
  ...stages.map((value) => ({ value, text: stageTitles[value] })),
];
const consentChoices = [
  { value: 'any' as const, text: 'Any' },
  ...consents.map((value) => ({ value, text: consentTitles[value] })),
];

export function WorkOrdersPage() {
  const [filter, setAddress] = useAddress(address);
  const { search, stage, consent, customerId, held } = filter;
  const orders = usePages(workOrderOperations.listWorkOrders, {
    ...(search === '' ? {} : { search }),
    ...(stage === 'all' ? {} : { stage }),
    ...(consent === 'any' ? {} : { consent }),
    ...(customerId === '' ? {} : { customerId }),
    ...(held === '' ? {} : { held: 'true' as const }),
  });
  const customer = orders.rows.find((row) => row.customer.id === customerId)?.customer.name;
  return (
    <div className="sheet">
      <PagesFrame of={orders}>
        <OrderTable
          rows={orders.rows}
          tools={
            <>
              <FilterField
                label="Number, serial, customer"
                value={search}
                onChange={(text) => setAddress({ search: text })}
              />
              <InlineSelect
                label="Where it is"
                value={stage}
                onChange={(value) => setAddress({ stage: value })}
                choices={stageChoices}
                isRequired
              />
              <InlineSelect
                label="Consent"
                value={consent}
                onChange={(value) => setAddress({ consent: value })}
                choices={consentChoices}
                isRequired
              />
              <Checkbox isSelected={held !== ''} onChange={(is) => setAddress({ held: is ? 'true' : '' })}>
                Only held ones
              </Checkbox>
              {customerId === '' ? null : (
                <Checkbox isSelected onChange={() => setAddress({ customerId: '' })}>
                  Only {customer ?? 'this customer'}
                </Checkbox>
              )}
            </>
          }
        />
      </PagesFrame>
    </div>
  );
}
