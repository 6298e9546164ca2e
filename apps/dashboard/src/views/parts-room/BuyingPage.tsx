import { buyingOperations } from '@hubwright/contracts/purchasing/buying-operations';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { useState } from 'react';
import { z } from 'zod';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { OrderFrom } from '../../features/purchasing/order-from.tsx';
import { SuggestionTable } from '../../features/purchasing/SuggestionTable.tsx';
import { groupsOf, type Suggestion, type SupplierGroup, wantedOf } from '../../features/purchasing/suggestions.ts';
import { countOf } from '../../format/numbers.ts';
import { plainDates } from '../../format/plain-dates.ts';
import { Amount } from '../../format/values.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { FilterField } from '../../ui/FilterField.tsx';
import { Link } from '../../ui/Link.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { StateMark } from '../../ui/StateMark.tsx';

const address = z.object({ search: z.string().catch('') });

interface Ordering {
  readonly supplier: SupplierGroup['supplier'];
  readonly rows: readonly Suggestion[];
}

/** What the group comes to, and whether the supplier takes so little or may be ordered from at all. */
function Standing({ group }: { group: SupplierGroup }) {
  const { supplier, cost } = group;
  if (!supplier) return <StateMark state="stop" word="nobody is named who sells these" />;
  const missing = Number(supplier.leastOrder) - cost;
  return (
    <p className="row tight">
      <span>
        In all <Amount minor={Math.round(cost * 100)} />
      </span>
      {missing > 0 ? (
        <StateMark state="waiting" word={`${missing.toFixed(2)} under its least order of ${supplier.leastOrder}`} />
      ) : null}
      {supplier.mayOrder ? null : <StateMark state="stop" word={plainDates(supplier.standing)} />}
    </p>
  );
}

function Group(props: { group: SupplierGroup; mayOrder: boolean; onOrder: (ordering: Ordering) => void }) {
  const { group, mayOrder, onOrder } = props;
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const ticked = group.rows.filter((row) => chosen.has(row.part.id));
  const rows = ticked.length > 0 ? ticked : group.rows;
  const name = group.supplier?.name ?? 'No supplier named';
  const choose = (partId: string, isChosen: boolean) => {
    const next = new Set(chosen);
    if (isChosen) next.add(partId);
    else next.delete(partId);
    setChosen(next);
  };
  return (
    <section className="sheet stack">
      <h2>{group.supplier ? <Link href={`/suppliers/${group.supplier.id}`}>{name}</Link> : name}</h2>
      <Standing group={group} />
      {mayOrder ? (
        <div className="row">
          <Button weight="next" onPress={() => onOrder({ supplier: group.supplier, rows })}>
            Order {countOf(rows.length, 'line')} from {group.supplier?.name ?? '…'}
          </Button>
        </div>
      ) : null}
      <SuggestionTable
        caption={`To buy from ${name}`}
        rows={group.rows}
        chosen={chosen}
        onChoose={mayOrder ? choose : undefined}
      />
    </section>
  );
}

/** Order, raise: two actions from why to an order on its way. */
export function BuyingPage() {
  const [{ search }, setAddress] = useAddress(address);
  const pages = usePages(buyingOperations.listSuggestions, search === '' ? {} : { search });
  const mayOrder = useMay(purchasingOperations.raiseOrder);
  const [ordering, setOrdering] = useState<Ordering>();
  const groups = groupsOf(pages.rows);
  return (
    <div className="stack">
      <FilterField label="Part" value={search} onChange={(text) => setAddress({ search: text })} />
      <PagesFrame of={pages}>
        <div className="stack">
          {groups.map((group) => (
            <Group key={group.supplier?.id ?? ''} group={group} mayOrder={mayOrder} onOrder={setOrdering} />
          ))}
          {groups.length === 0 && !pages.isFirst ? (
            <EmptyState title="Nothing has to be bought">
              No open kit is short, and what is used now and then is at its level.
            </EmptyState>
          ) : null}
        </div>
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
