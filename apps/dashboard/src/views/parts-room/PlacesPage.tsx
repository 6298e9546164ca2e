import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { useState } from 'react';
import { z } from 'zod';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { AddBinDialog } from '../../features/inventory/add-bin.tsx';
import { PlaceSheet } from '../../features/inventory/PlaceSheet.tsx';
import { PlaceTable } from '../../features/inventory/PlaceTable.tsx';
import { placeKey } from '../../features/inventory/places.ts';
import { useScan } from '../../scan/scan-context.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { Button } from '../../ui/Button.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import styles from './parts-room.module.css';

const address = z.object({ place: z.string().catch(''), only: z.enum(['', 'empty']).catch('') });

/** Left every place, right what lies in the one opened; a scanned bin opens. */
export function PlacesPage() {
  const places = usePages(partOperations.listPlaces, {});
  const [{ place, only }, setAddress] = useAddress(address);
  const mayAdd = useMay(partOperations.addBin);
  const [isAdding, setAdding] = useState(false);
  const opened = places.rows.find((row) => placeKey(row) === place);
  const shown = only === 'empty' ? places.rows.filter((row) => row.lots === 0) : places.rows;
  useScan((code) => {
    const key = placeKey({ kind: 'bin', ref: code.trim().toUpperCase() });
    const isBin = places.rows.some((row) => placeKey(row) === key);
    if (isBin) setAddress({ place: key });
    return isBin;
  });
  return (
    <div className={opened ? styles.beside : ''}>
      <div className="sheet">
        <PagesFrame of={places}>
          <PlaceTable
            places={shown}
            hrefOf={(row) => `/places?place=${encodeURIComponent(placeKey(row))}${only ? `&only=${only}` : ''}`}
            tools={
              <>
                <Checkbox isSelected={only === 'empty'} onChange={(is) => setAddress({ only: is ? 'empty' : '' })}>
                  Only empty bins
                </Checkbox>
                {mayAdd ? <Button onPress={() => setAdding(true)}>Add a bin</Button> : null}
              </>
            }
          />
        </PagesFrame>
      </div>
      {opened ? <PlaceSheet key={placeKey(opened)} place={opened} /> : null}
      {isAdding ? (
        <AddBinDialog
          onClose={() => setAdding(false)}
          onAdded={(code) => {
            setAdding(false);
            setAddress({ place: placeKey({ kind: 'bin', ref: code }) });
          }}
        />
      ) : null}
    </div>
  );
}
