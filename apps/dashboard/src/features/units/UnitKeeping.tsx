import { preservationTitles, useTitles } from '@hubwright/contracts/manuals/service-limits';
import { keepingOperations } from '@hubwright/contracts/units/keeping-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { useToday } from '../../format/use-today.ts';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { keepingQuery, type StorageRow } from './keeping.ts';
import { PutInStorage } from './put-in-storage.tsx';
import { SayUse } from './say-use.tsx';
import { ChangeStorage, type StorageChange } from './storage-change.tsx';

/** How a unit is used, how old it is, and when it lay in storage: what the manual makes its limits depend on. */
export function UnitKeeping({ itemId }: { itemId: string }) {
  const { data, error } = useQuery(keepingQuery(itemId));
  const may = useMay(keepingOperations.sayUse);
  const today = useToday();
  const [asked, setAsked] = useState<'use' | 'storage'>();
  const [changed, setChanged] = useState<{ how: StorageChange; of: StorageRow }>();
  if (error) return <Refusal problem={error} />;
  if (!data) return <Skeleton lines={3} />;
  const close = () => {
    setAsked(undefined);
    setChanged(undefined);
  };
  const standing = data.storage.filter(({ state }) => state === 'stands');
  return (
    <div className="stack">
      <p>
        {data.use === null ? 'Nobody said how it is used: the strictest time counts.' : `${useTitles[data.use]} use.`}{' '}
        {data.madeOn === null ? (
          'The day it was made is not on record.'
        ) : (
          <>
            Made on <DateText date={data.madeOn} />.
          </>
        )}
        {data.uses[0] ? <span className="small soft"> {`(${data.uses[0].basis})`}</span> : null}
      </p>
      {standing.length === 0 ? <p className="soft">No time in storage is on record.</p> : null}
      <ul className="lines">
        {standing.map((row) => (
          <StorageLine key={row.id} row={row} onChange={may ? (how) => setChanged({ how, of: row }) : undefined} />
        ))}
      </ul>
      {may ? (
        <div className="row">
          <Button onPress={() => setAsked('use')}>Say its use and age</Button>
          <Button onPress={() => setAsked('storage')}>Record a time in storage</Button>
        </div>
      ) : null}
      {asked === 'use' ? <SayUse itemId={itemId} known={data} onClose={close} /> : null}
      {asked === 'storage' ? <PutInStorage itemId={itemId} today={today} onClose={close} /> : null}
      {changed ? <ChangeStorage {...changed} today={today} onClose={close} /> : null}
    </div>
  );
}

function StorageLine({ row, onChange }: { row: StorageRow; onChange: ((how: StorageChange) => void) | undefined }) {
  return (
    <li>
      <span>
        In storage from <DateText date={row.from} />{' '}
        {row.to === null ? (
          'on'
        ) : (
          <>
            to <DateText date={row.to} />
          </>
        )}
        , {preservationTitles[row.preservation]}
        {row.inspectedOn === null ? null : (
          <>
            , inspected <DateText date={row.inspectedOn} />
          </>
        )}
        <br />
        <span className="small soft">
          {row.basis} ({row.recordedBy})
        </span>
      </span>
      {onChange ? (
        <span className="row">
          {row.to === null ? (
            <>
              <Button weight="quiet" onPress={() => onChange('inspected')}>
                Inspected
              </Button>
              <Button weight="quiet" onPress={() => onChange('taken-out')}>
                Taken out
              </Button>
            </>
          ) : null}
          <Button weight="quiet" onPress={() => onChange('withdrawn')}>
            Never was
          </Button>
        </span>
      ) : null}
    </li>
  );
}
