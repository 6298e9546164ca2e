import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { fieldState, fieldStates } from '@hubwright/contracts/field-balance/shapes';
import { type ReactNode, Suspense, useState } from 'react';
import { z } from 'zod';
import { useMay, useMe } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { BalanceTable } from '../../features/field-balance/BalanceTable.tsx';
import { DataSheet, HardwareSheet } from '../../features/field-balance/DataSheets.tsx';
import { stateMarks } from '../../features/field-balance/field-balance.ts';
import { PlanBalance } from '../../features/field-balance/plan-balance.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { Button } from '../../ui/Button.tsx';
import { FilterField } from '../../ui/FilterField.tsx';
import { InlineSelect } from '../../ui/InlineSelect.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { Tabs } from '../../ui/Tabs.tsx';

const sheets = ['orders', 'data', 'hardware'] as const;
const address = z.object({
  sheet: z.enum(sheets).catch('orders'),
  search: z.string().catch(''),
  state: z.union([fieldState, z.enum(['open', 'all'])]).catch('open'),
});
const stateChoices = [
  { value: 'open' as const, text: 'Under way' },
  { value: 'all' as const, text: 'All' },
  ...fieldStates.map((value) => ({ value, text: stateMarks[value].word })),
];

function Orders() {
  const [{ search, state }, setAddress] = useAddress(address);
  const orders = usePages(fieldBalanceOperations.listFieldBalances, {
    ...(search === '' ? {} : { search }),
    ...(state === 'all' ? {} : { state }),
  });
  return (
    <PagesFrame of={orders}>
      <BalanceTable
        rows={orders.rows}
        tools={
          <>
            <FilterField
              label="Number, aircraft, serial, customer"
              value={search}
              onChange={(text) => setAddress({ search: text })}
            />
            <InlineSelect
              label="Stands at"
              value={state}
              onChange={(value) => setAddress({ state: value })}
              choices={stateChoices}
              isRequired
            />
          </>
        }
      />
    </PagesFrame>
  );
}

/** Each sheet waits for itself: where the whole page waits, a table that goes with the sheet before never ends its work. */
const waited = (sheet: ReactNode) => <Suspense fallback={<Skeleton />}>{sheet}</Suspense>;

/** Balances on the aircraft, and what they are done by and with. */
export function OnAircraftPage() {
  const me = useMe();
  const mayPlan = useMay(fieldBalanceOperations.planFieldBalance);
  const [{ sheet }, setAddress] = useAddress(address);
  const [isPlanning, setPlanning] = useState(false);
  return (
    <div className="sheet stack">
      <div className="row between">
        <p>Dynamic balance after installation: orders of their own, which no release of the shop waits for.</p>
        {mayPlan ? (
          <Button weight="next" onPress={() => setPlanning(true)}>
            Plan a balance
          </Button>
        ) : null}
      </div>
      <Tabs
        label="On the aircraft"
        selected={sheet}
        onSelect={(id) => setAddress({ sheet: id as (typeof sheets)[number] })}
        sheets={[
          { id: 'orders', title: 'Orders', content: waited(<Orders />) },
          { id: 'data', title: 'Places and limits', content: waited(<DataSheet signer={me} />) },
          { id: 'hardware', title: 'Balance weights', content: waited(<HardwareSheet />) },
        ]}
      />
      {isPlanning ? <PlanBalance onClose={() => setPlanning(false)} /> : null}
    </div>
  );
}
