import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { partClassesInStock, partOperations } from '@hubwright/contracts/inventory/part-operations';
import { useState } from 'react';
import { z } from 'zod';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { AddPartDialog } from '../../features/inventory/add-part.tsx';
import { PartTable } from '../../features/inventory/PartTable.tsx';
import { classWords } from '../../features/inventory/stock-words.ts';
import { useAddress } from '../../shell/use-address.ts';
import { Button } from '../../ui/Button.tsx';
import { FilterField } from '../../ui/FilterField.tsx';
import { InlineSelect } from '../../ui/InlineSelect.tsx';
import { useNavigateTo } from '../../ui/Link.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';

const classes = ['any', ...partClassesInStock] as const;
const address = z.object({ search: z.string().catch(''), class: z.enum(classes).catch('any') });
const choices = classes.map((value) => ({ value, text: value === 'any' ? 'any class' : classWords[value] }));

/** Part numbers with what there is of each. */
export function PartsPage() {
  const [filter, setAddress] = useAddress(address);
  const asked = {
    ...(filter.search === '' ? {} : { search: filter.search }),
    ...(filter.class === 'any' ? {} : { class: filter.class }),
  };
  const parts = usePages(partOperations.listParts, asked);
  // Both lists go by the number, so their pages are of the same parts.
  const stock = usePages(inventoryOperations.listPartStock, asked);
  const more = () => {
    parts.more?.();
    stock.more?.();
  };
  const both = {
    ...parts,
    isReading: parts.isReading || stock.isReading,
    problem: parts.problem ?? stock.problem,
    more: parts.more || stock.more ? more : undefined,
  };
  const mayAdd = useMay(partOperations.addPart);
  const navigate = useNavigateTo();
  const [isAdding, setAdding] = useState(false);
  return (
    <div className="sheet">
      <PagesFrame of={both}>
        <PartTable
          parts={parts.rows}
          stock={new Map(stock.rows.map((row) => [row.part.id, row]))}
          tools={
            <>
              <FilterField
                label="Number or description"
                value={filter.search}
                onChange={(text) => setAddress({ search: text })}
              />
              <InlineSelect
                label="Class"
                value={filter.class}
                onChange={(value) => setAddress({ class: value })}
                choices={choices}
                isRequired
              />
              {mayAdd ? <Button onPress={() => setAdding(true)}>Add a part number</Button> : null}
            </>
          }
        />
      </PagesFrame>
      {isAdding ? (
        <AddPartDialog
          onClose={() => setAdding(false)}
          onAdded={(id, standIns) => navigate(`/parts/${id}${standIns > 0 ? '?asked=stand-ins' : ''}`)}
        />
      ) : null}
    </div>
  );
}
