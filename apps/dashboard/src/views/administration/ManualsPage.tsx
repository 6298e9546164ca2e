import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { useState } from 'react';
import { z } from 'zod';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { AddManual } from '../../features/manuals/add-manual.tsx';
import { ManualSheet } from '../../features/manuals/ManualSheet.tsx';
import { ManualTable } from '../../features/manuals/ManualTable.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { Button } from '../../ui/Button.tsx';
import { FilterField } from '../../ui/FilterField.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import styles from './administration.module.css';

const address = z.object({ manual: z.string().catch(''), search: z.string().catch('') });

/** Left the manuals, right the revisions of the one opened. */
export function ManualsPage() {
  const [{ manual, search }, setAddress] = useAddress(address);
  const manuals = usePages(manualOperations.listManuals, search === '' ? {} : { search });
  const mayAdd = useMay(manualOperations.addManual);
  const [isAdding, setAdding] = useState(false);
  const opened = manuals.rows.find((row) => row.id === manual);
  return (
    <div className={opened ? styles.beside : ''}>
      <div className="sheet">
        <PagesFrame of={manuals}>
          <ManualTable
            manuals={manuals.rows}
            isNarrow={opened !== undefined}
            hrefOf={(row) => `/manuals?manual=${row.id}${search ? `&search=${encodeURIComponent(search)}` : ''}`}
            tools={
              <>
                <FilterField label="Number or title" value={search} onChange={(text) => setAddress({ search: text })} />
                {mayAdd ? <Button onPress={() => setAdding(true)}>Add a manual</Button> : null}
              </>
            }
          />
        </PagesFrame>
      </div>
      {opened ? <ManualSheet key={opened.id} manual={opened} /> : null}
      {isAdding ? (
        <AddManual
          onClose={() => setAdding(false)}
          onAdded={(added) => {
            setAdding(false);
            setAddress({ manual: added });
          }}
        />
      ) : null}
    </div>
  );
}
