import { inventoryOperations, lotStates } from '@hubwright/contracts/inventory/operations';
import { z } from 'zod';
import { usePages } from '../../api/pages.ts';
import { LotTable } from '../../features/inventory/LotTable.tsx';
import { lotMarks } from '../../features/inventory/stock-words.ts';
import { useAddress } from '../../shell/use-address.ts';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { FilterField } from '../../ui/FilterField.tsx';
import { InlineSelect } from '../../ui/InlineSelect.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';

const states = ['any', ...lotStates] as const;
const address = z.object({
  search: z.string().catch(''),
  state: z.enum(states).catch('any'),
  bin: z.string().catch(''),
  used: z.enum(['', 'shown']).catch(''),
});
const choices = states.map((value) => ({ value, text: value === 'any' ? 'any state' : lotMarks[value].word }));

/** Every lot, by what it is, where it lies and whether it may be used. */
export function StockPage() {
  const [{ search, state, bin, used }, setAddress] = useAddress(address);
  const lots = usePages(inventoryOperations.listLots, {
    ...(search === '' ? {} : { search }),
    ...(state === 'any' ? {} : { state }),
    ...(bin === '' ? {} : { bin }),
  });
  const shown = used === 'shown' ? lots.rows : lots.rows.filter((lot) => lot.onHand > 0);
  return (
    <div className="sheet">
      <PagesFrame of={lots}>
        <LotTable
          caption="Lots"
          lots={shown}
          tools={
            <>
              <FilterField
                label="Lot, part or supplier’s lot"
                value={search}
                onChange={(text) => setAddress({ search: text })}
              />
              <FilterField label="Bin" value={bin} placeholder="A-01" onChange={(text) => setAddress({ bin: text })} />
              <InlineSelect
                label="State"
                value={state}
                onChange={(value) => setAddress({ state: value })}
                choices={choices}
                isRequired
              />
              <Checkbox isSelected={used === 'shown'} onChange={(is) => setAddress({ used: is ? 'shown' : '' })}>
                Also used up
              </Checkbox>
            </>
          }
          empty={<EmptyState title="No lot fits">Search for less, or show lots in any state.</EmptyState>}
        />
      </PagesFrame>
    </div>
  );
}
