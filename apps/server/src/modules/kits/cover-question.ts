import { addDays } from '@hubwright/rules/dates';
import type { Alternate, CoverInput } from '@hubwright/rules/shortage';
import type { LineRow, OrderRow, StockRow, Supply } from './cover-rows.ts';
import type { Basis } from './cover-state.ts';
import type { ForeseenDemand } from './foreseen-cover.ts';
import { toPull } from './line-figures.ts';
import { likelyPercent } from './odds.ts';
import { buildDay, type StandIns, standInsOf } from './stand-ins.ts';

/**
 * Puts the open kit lines as a question to `shortage.cover`. Reservations are hard: what is promised is off both sides.
 *
 * The rule knows parts, not sources or owners. So supply is named part × source × owner, demand part × what its customer takes,
 * and the way from one to the other is laid as alternates in order: the part itself (the customer's own first), then stand-ins.
 * What waits in quarantine with its paper counts as coming today; order lines may come from any source. Work that no customer has
 * approved yet is expected, not firm: it never takes what firm work needs; and what is only foreseen takes what is left by both.
 */
export function coverQuestion(
  lines: readonly LineRow[],
  supply: Supply,
  { basis, foreseen = [] }: { basis: Basis; foreseen?: readonly ForeseenDemand[] },
): CoverInput {
  const { today, policy } = basis;
  const demanding = lines
    .map((line) => ({ line, quantity: toPull(line, line, line.tornDown) - line.reserved }))
    .filter(({ quantity }) => quantity > 0);
  const ways = new Ways(supply, today);
  const stock = supply.stock.filter(({ free, hasPaper }) => free > 0 && hasPaper);
  const leads = [...demanding.map(({ line }) => line), ...foreseen];
  return {
    asOf: today,
    order: policy.order,
    demands: [
      ...demanding.map(({ line, quantity }) => demandOf(line, quantity, { ways, basis })),
      ...foreseen.map((demand) => foreseenDemand(demand, ways, today)),
    ],
    onHand: stock.filter(({ state }) => state === 'accepted').map(asLot),
    incoming: [
      ...stock.filter(({ state }) => state === 'quarantine').map((lot) => ({ ...asLot(lot), date: today })),
      ...supply.orders.map(asOrder),
    ],
    alternates: ways.alternates,
    leadTimeDays: Object.fromEntries(leads.map((each) => [ways.demandKey(each), each.leadTimeDays])),
  };
}

function demandOf(line: LineRow, quantity: number, { ways, basis }: { ways: Ways; basis: Basis }) {
  return {
    ...{ id: line.lineId, part: ways.demandKey(line), quantity, needBy: line.needBy },
    priority: Math.max(1, line.priority),
    minimumExpiry: lastGoodDay(line, basis.today),
    expected: likelyPercent(line, basis) !== null,
  };
}

function foreseenDemand(demand: ForeseenDemand, ways: Ways, today: string) {
  return {
    ...{ id: demand.id, part: ways.demandKey(demand), quantity: demand.pieces, needBy: demand.needBy },
    minimumExpiry: lastGoodDay(demand, today),
    foreseen: true,
  };
}

/** The least `expires` a line accepts: on the build day its minimum of days must be left. */
export function lastGoodDay(line: Pick<LineRow, 'needBy' | 'minimumDaysAtBuild'>, today: string): string {
  const [, buildDay = today] = [line.needBy, today].sort();
  return addDays(buildDay, Math.max(1, line.minimumDaysAtBuild));
}

function asLot(lot: StockRow) {
  const { id, free, expiresOn } = lot;
  return { id, part: stockKey(lot), quantity: free, ...(expiresOn ? { expires: expiresOn } : {}) };
}

function asOrder(order: OrderRow) {
  return { id: order.id, part: orderKey(order.partId), quantity: order.open, date: order.dueOn };
}

function stockKey({ partId, sourceClass, ownerId }: Pick<StockRow, 'partId' | 'sourceClass' | 'ownerId'>): string {
  return `${partId}#${sourceClass}#${ownerId ?? ''}`;
}

function orderKey(partId: string): string {
  return `${partId}#order`;
}

/** Who asks for what part, as far as it decides what may serve it. */
type Asking = Pick<LineRow, 'acceptedSources' | 'customerId' | 'needBy'> & { readonly part: { readonly id: string } };

/** Which supply may serve which demand, laid once per part and kind of customer. */
class Ways {
  readonly alternates: Alternate[] = [];
  private readonly laid = new Set<string>();
  private readonly owners: Set<string>;
  private readonly standIns: StandIns;
  private readonly today: string;

  constructor(supply: Supply, today: string) {
    this.owners = new Set(supply.stock.flatMap(({ ownerId }) => (ownerId ? [ownerId] : [])));
    this.standIns = standInsOf(supply.alternates);
    this.today = today;
  }

  demandKey({ part, acceptedSources, customerId, needBy }: Asking): string {
    const owner = this.owners.has(customerId) ? customerId : '';
    const partIds = this.standIns.parts(part.id, buildDay(needBy, this.today));
    const key = `${part.id}@${[...acceptedSources].sort().join('+')}@${owner}@${partIds.join('+')}`;
    if (!this.laid.has(key)) this.lay(key, { partIds, acceptedSources, owner });
    return key;
  }

  private lay(
    key: string,
    to: { partIds: string[]; acceptedSources: LineRow['acceptedSources']; owner: string },
  ): void {
    this.laid.add(key);
    for (const partId of to.partIds) {
      const owners = to.owner ? [to.owner, null] : [null];
      for (const ownerId of owners)
        for (const sourceClass of to.acceptedSources)
          this.alternates.push({ part: key, use: stockKey({ partId, sourceClass, ownerId }) });
      this.alternates.push({ part: key, use: orderKey(partId) });
    }
  }
}
