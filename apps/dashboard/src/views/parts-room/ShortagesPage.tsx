import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { useState } from 'react';
import { z } from 'zod';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { ShortageTable } from '../../features/kits/ShortageTable.tsx';
import { bySupplier, ofKit, type Shortage } from '../../features/kits/shortages.ts';
import type { Wanted } from '../../features/purchasing/order-draft.ts';
import { OrderFrom } from '../../features/purchasing/order-from.tsx';
import { countOf } from '../../format/numbers.ts';
import { useAddress } from '../../shell/use-address.ts';
import { Button } from '../../ui/Button.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { FilterField } from '../../ui/FilterField.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';

const address = z.object({
  ...{ kit: z.string().catch(''), search: z.string().catch('') },
  /** `yes`: also parts that only what is expected runs short of. */
  expected: z.enum(['yes', 'no']).catch('no'),
});

interface Ordering {
  readonly supplier: Shortage['supplier'];
  readonly rows: readonly Shortage[];
}

function wantedOf({ part, suggested, packSize, leadTimeDays, unitPrice }: Shortage): Wanted {
  return { part, quantity: suggested, packSize, leadTimeDays, unitPrice };
}

/** Tick, order, raise: three actions from the list to a raised order. Ticked parts of one supplier go into one order. */
export function ShortagesPage() {
  const [{ kit, search, expected }, setAddress] = useAddress(address);
  const pages = usePages(kitsOperations.shortages, {
    ...(search === '' ? {} : { search }),
    of: expected === 'yes' ? 'all' : 'kits',
  });
  const mayOrder = useMay(purchasingOperations.raiseOrder);
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const [ordering, setOrdering] = useState<Ordering>();
  const rows = ofKit(pages.rows, kit);
  const groups = bySupplier(rows.filter((row) => chosen.has(row.part.id)));
  const choose = (partId: string, isChosen: boolean) => {
    const next = new Set(chosen);
    if (isChosen) next.add(partId);
    else next.delete(partId);
    setChosen(next);
  };
  return (
    <div className="sheet">
      <PagesFrame of={pages}>
        <ShortageTable
          rows={rows}
          chosen={chosen}
          onChoose={choose}
          onOrder={mayOrder ? (row) => setOrdering({ supplier: row.supplier, rows: [row] }) : undefined}
          tools={
            <>
              <FilterField label="Part" value={search} onChange={(text) => setAddress({ search: text })} />
              <Checkbox isSelected={expected === 'yes'} onChange={(is) => setAddress({ expected: is ? 'yes' : 'no' })}>
                Also what only expected units run short of
              </Checkbox>
              {kit ? <Button onPress={() => setAddress({ kit: '' })}>Only {kit}: show all kits</Button> : null}
              {groups.map((group) => (
                <Button key={group.supplier?.id ?? ''} weight="next" onPress={() => setOrdering(group)}>
                  Order {countOf(group.rows.length, 'line')} from {group.supplier?.name ?? '…'}
                </Button>
              ))}
            </>
          }
        />
      </PagesFrame>
      {ordering ? (
        <OrderFrom
          supplier={ordering.supplier}
          wanted={ordering.rows.map(wantedOf)}
          onClose={() => setOrdering(undefined)}
        />
      ) : null}
    </div>
  );
}
