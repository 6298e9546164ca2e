import { promiseOperations } from '@hubwright/contracts/kits/promise-operations';
import { useQuery } from '@tanstack/react-query';
import { queryFor } from '../../api/query.ts';
import { ServesTable } from '../../features/kits/ServesTable.tsx';
import { WhatIfLotMoves } from '../../features/kits/what-if-lot-moves.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';

/** Whom a lot serves, what of it is free, and what if it went elsewhere. */
export function LotServes({ lot }: { lot: { id: string; code: string; state: string } }) {
  const serves = useQuery(queryFor(promiseOperations.lotServes, { lotId: lot.id }));
  if (serves.error) return <Refusal problem={serves.error} />;
  return (
    <section className="sheet stack">
      <h2>Which kits it serves</h2>
      {serves.data ? (
        <>
          <p>{serves.data.free} free.</p>
          <ServesTable caption={`Kits that ${lot.code} serves`} rows={serves.data.rows} />
        </>
      ) : (
        <Skeleton lines={3} />
      )}
      {lot.state === 'accepted' ? <WhatIfLotMoves lotId={lot.id} /> : null}
    </section>
  );
}

/** Whom an order serves, all its lines together. */
export function OrderServes({ order }: { order: { id: string; number: string } }) {
  const serves = useQuery(queryFor(promiseOperations.orderServes, { orderId: order.id }));
  if (serves.error) return <Refusal problem={serves.error} />;
  const free = serves.data?.lines.reduce((sum, line) => sum + line.free, 0) ?? 0;
  return (
    <section className="sheet stack">
      <h2>Which kits wait for it</h2>
      {serves.data ? (
        <>
          <p>{free === 0 ? 'All that is open is counted on.' : `${free} of what is open no kit asks for.`}</p>
          <ServesTable
            caption={`Kits that wait for ${order.number}`}
            rows={serves.data.lines.flatMap(({ rows }) => rows)}
          />
        </>
      ) : (
        <Skeleton lines={3} />
      )}
    </section>
  );
}
