import { processOperations } from '@hubwright/contracts/processes/operations';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { z } from 'zod';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { AddInstrument } from '../../features/processes/add-instrument.tsx';
import { InstrumentSheet } from '../../features/processes/InstrumentSheet.tsx';
import { InstrumentTable } from '../../features/processes/InstrumentTable.tsx';
import { useToday } from '../../format/use-today.ts';
import { useAddress } from '../../shell/use-address.ts';
import { Button } from '../../ui/Button.tsx';
import { FilterField } from '../../ui/FilterField.tsx';
import { useNavigateTo } from '../../ui/Link.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import styles from './administration.module.css';

const address = z.object({ search: z.string().catch('') });

/** Left every instrument, the most overdue first; right the one opened. */
export function InstrumentsPage() {
  const { instrumentId } = useParams({ strict: false }) as { instrumentId?: string };
  const [{ search }, setAddress] = useAddress(address);
  const instruments = usePages(processOperations.listInstruments, {
    order: 'due',
    ...(search === '' ? {} : { search }),
  });
  const mayAdd = useMay(processOperations.addInstrument);
  const [isAdding, setAdding] = useState(false);
  const navigate = useNavigateTo();
  const today = useToday();
  const opened = instruments.rows.find((row) => row.id === instrumentId);
  return (
    <div className={opened ? styles.beside : ''}>
      <div className="sheet">
        <PagesFrame of={instruments}>
          <InstrumentTable
            instruments={instruments.rows}
            today={today}
            hrefOf={(row) => `/instruments/${row.id}${search ? `?search=${encodeURIComponent(search)}` : ''}`}
            isNarrow={opened !== undefined}
            tools={
              <>
                <FilterField label="Tag or name" value={search} onChange={(text) => setAddress({ search: text })} />
                {mayAdd ? <Button onPress={() => setAdding(true)}>Add an instrument</Button> : null}
              </>
            }
          />
        </PagesFrame>
      </div>
      {opened ? <InstrumentSheet key={opened.id} instrument={opened} today={today} /> : null}
      {isAdding ? (
        <AddInstrument
          onClose={() => setAdding(false)}
          onAdded={(id) => {
            setAdding(false);
            navigate(`/instruments/${id}`);
          }}
        />
      ) : null}
    </div>
  );
}
