import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { useState } from 'react';
import { z } from 'zod';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { AddModel } from '../../features/manuals/add-model.tsx';
import { ModelSheet } from '../../features/manuals/ModelSheet.tsx';
import { ModelTable } from '../../features/manuals/ModelTable.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { Button } from '../../ui/Button.tsx';
import { FilterField } from '../../ui/FilterField.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import styles from './administration.module.css';

const address = z.object({ model: z.string().catch(''), search: z.string().catch('') });

/** Left the models, right the one opened. */
export function ModelsPage() {
  const [{ model, search }, setAddress] = useAddress(address);
  const models = usePages(manualOperations.listModels, search === '' ? {} : { search });
  const mayAdd = useMay(manualOperations.addModel);
  const [isAdding, setAdding] = useState(false);
  const opened = models.rows.find((row) => row.id === model);
  return (
    <div className={opened ? styles.beside : ''}>
      <div className="sheet">
        <PagesFrame of={models}>
          <ModelTable
            models={models.rows}
            isNarrow={opened !== undefined}
            hrefOf={(row) => `/models?model=${row.id}${search ? `&search=${encodeURIComponent(search)}` : ''}`}
            tools={
              <>
                <FilterField label="Model or maker" value={search} onChange={(text) => setAddress({ search: text })} />
                {mayAdd ? <Button onPress={() => setAdding(true)}>Add a model</Button> : null}
              </>
            }
          />
        </PagesFrame>
      </div>
      {opened ? <ModelSheet key={opened.id} row={opened} /> : null}
      {isAdding ? (
        <AddModel
          onClose={() => setAdding(false)}
          onAdded={(added) => {
            setAdding(false);
            setAddress({ model: added });
          }}
        />
      ) : null}
    </div>
  );
}
