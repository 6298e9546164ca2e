import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { z } from 'zod';
import { useMay, useMe } from '../../api/me.ts';
import { DueNotes } from '../../features/peening/DueNotes.tsx';
import { LotList } from '../../features/peening/LotList.tsx';
import { MachineSheet } from '../../features/peening/MachineSheet.tsx';
import { MediaList } from '../../features/peening/MediaList.tsx';
import { MediaReviews } from '../../features/peening/MediaReviews.tsx';
import {
  lotsQuery,
  machinesQuery,
  mediaQuery,
  mediaReviewsQuery,
  waitingQuery,
} from '../../features/peening/peening.ts';
import { StartLot } from '../../features/peening/start-lot.tsx';
import { countOf } from '../../format/numbers.ts';
import { useAddress } from '../../shell/use-address.ts';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Tabs } from '../../ui/Tabs.tsx';

const sheets = ['lots', 'machines', 'media', 'ended'] as const;
const address = z.object({ sheet: z.enum(sheets).catch('lots') });

/** Peening: what waits, which lot needs strips, and what the machines are qualified for. */
export function PeeningPage() {
  const me = useMe();
  const machines = useSuspenseQuery(machinesQuery).data.rows;
  const waiting = useSuspenseQuery(waitingQuery).data.rows;
  const lots = useSuspenseQuery(lotsQuery('under-way')).data.rows;
  const all = useSuspenseQuery(lotsQuery('all')).data.rows;
  const media = useSuspenseQuery(mediaQuery).data.rows;
  const reviews = useSuspenseQuery(mediaReviewsQuery).data.rows;
  const mayStart = useMay(peeningOperations.startPeeningLot);
  const [{ sheet }, setAddress] = useAddress(address);
  const [isStarting, setStarting] = useState(false);
  const free = waiting.filter(({ blocked }) => blocked === null);
  return (
    <div className="sheet stack">
      <div className="row between">
        <p>
          {countOf(free.length, 'part')} {free.length === 1 ? 'waits' : 'wait'} for peening
          {waiting.length > free.length ? `, ${waiting.length - free.length} more cannot go on yet` : ''}.
        </p>
        {mayStart && free.length > 0 ? (
          <Button weight="next" onPress={() => setStarting(true)}>
            Begin a lot
          </Button>
        ) : null}
      </div>
      <DueNotes machines={machines} lots={lots} reviews={reviews} />
      <Tabs
        label="Peening"
        selected={sheet}
        onSelect={(id) => setAddress({ sheet: id as (typeof sheets)[number] })}
        sheets={[
          {
            id: 'lots',
            title: `Under way (${lots.length})`,
            content: (
              <>
                <MediaReviews reviews={reviews} signer={me} />
                <LotList lots={lots} signer={me} />
              </>
            ),
          },
          {
            id: 'machines',
            title: `Machines (${machines.length})`,
            content:
              machines.length === 0 ? (
                <EmptyState title="No peening machine is on record" />
              ) : (
                machines.map((machine) => <MachineSheet key={machine.id} machine={machine} signer={me} />)
              ),
          },
          {
            id: 'media',
            title: `Media (${media.length})`,
            content: <MediaList media={media} machines={machines} signer={me} />,
          },
          { id: 'ended', title: 'All lots', content: <LotList lots={all} signer={me} /> },
        ]}
      />
      {isStarting ? (
        <StartLot waiting={waiting} machines={machines} signer={me} onClose={() => setStarting(false)} />
      ) : null}
    </div>
  );
}
