import { type LifeLimit, lifeVerdict } from '@hubwright/rules/due';
import type { Tx } from '../../platform/database/client.ts';
import { lifeLimitsOf } from '../manuals/public.ts';
import { overhaulCounts } from '../units/public.ts';
import { type Holders, item, type OpenItem } from './open-item.ts';
import { overhauledItems } from './release-content.ts';
import type { ReleaseFacts } from './release-facts.ts';
import { wordOfWork } from './word-of-work.ts';

/**
 * Fitted parts, the unit itself included, that the work's manual revision limits in life and whose total since new is not known
 * or used up. The current approved manual and its airworthiness limitations decide; this list only names them.
 */
export async function lifeItems(
  tx: Tx,
  facts: ReleaseFacts,
  { holders, today }: { holders: Holders; today: string },
): Promise<OpenItem[]> {
  const { workOrder, within } = facts;
  const limits = await lifeLimitsOf(tx, workOrder);
  if (limits.size === 0) return [];
  const fitted = [
    { position: 'the unit', item: workOrder.unit },
    ...within.map(({ position, item: part }) => ({ position, item: part })),
  ];
  const overhaulsOf = await overhaulsWith(tx, facts);
  return fitted.flatMap(({ position, item: part }) => {
    const limit = limits.get(part.partNumber.toUpperCase());
    if (!limit) return [];
    const verdict = lifeVerdict(given(limit), { ...flownBy(facts, part.id, today), ...overhaulsOf(part.id) });
    if (verdict.state === 'within') return [];
    const name = `${position}, ${part.partNumber} serial ${part.serial ?? 'not read'}`;
    const bounds = verdict.by.map((measure) => boundOf(limit, measure));
    const by = { subject: { kind: 'unit', id: part.id } };
    return verdict.state === 'reached'
      ? [
          item('life-limit', `${name}: its life limit of ${bounds.join(' and ')} is reached; it is retired`, {
            ...by,
            people: holders.get('dimensional-inspection inspect') ?? [],
          }),
        ]
      : [
          item('life-limit', `${name}: limited to ${bounds.join(' and ')} since new, and its total is unknown`, {
            ...by,
            people: holders.get('receiving-inspection inspect') ?? [],
          }),
        ];
  });
}

/** Hours and cycles as computed for today, with what is known of them at least. */
function flownBy({ times }: ReleaseFacts, itemId: string, today: string) {
  const hours = times.on(itemId, today).sinceNew;
  const cycles = times.on(itemId, today, 'cycles').sinceNew;
  return {
    ...{ hoursTenths: hours.tenths, cycles: cycles.tenths },
    atLeast: { hoursTenths: hours.atLeastTenths, cycles: cycles.atLeastTenths },
  };
}

interface Limit {
  readonly hoursTenths: number | null;
  readonly cycles: number | null;
  readonly overhauls: number | null;
}

function given({ hoursTenths, cycles, overhauls }: Limit): LifeLimit {
  return {
    ...(hoursTenths === null ? {} : { hoursTenths }),
    ...(cycles === null ? {} : { cycles }),
    ...(overhauls === null ? {} : { overhauls }),
  };
}

function boundOf(limit: Limit, measure: keyof LifeLimit): string {
  if (measure === 'hoursTenths') return inHours(limit.hoursTenths);
  const count = limit[measure];
  return `${count} ${count === 1 ? measure.slice(0, -1) : measure}`;
}

/** Overhauls since new with that of this visit, which is recorded with the release; what nobody counted is at least what is on record here. */
async function overhaulsWith(tx: Tx, facts: ReleaseFacts) {
  const itemIds = [facts.workOrder.unitId, ...facts.within.map(({ itemId }) => itemId)];
  const rows = await tx.timeRecord.groupBy({
    by: ['itemId'],
    where: { itemId: { in: itemIds }, basis: 'overhaul' },
    _count: true,
  });
  const counts = await overhaulCounts(tx, itemIds);
  const here = new Map(rows.map(({ itemId, _count }) => [itemId, _count]));
  const isOverhaul = facts.workOrder.scope === 'overhaul' || wordOfWork(facts).word === 'overhauled';
  const now = new Set(isOverhaul ? overhauledItems(facts) : []);
  return (itemId: string) => {
    const counted = counts.get(itemId) ?? null;
    const more = now.has(itemId) ? 1 : 0;
    return {
      overhauls: counted === null ? ('unknown' as const) : counted + more,
      overhaulsAtLeast: (here.get(itemId) ?? 0) + more,
    };
  };
}

const hours = new Intl.NumberFormat('en-US', { minimumFractionDigits: 1, maximumFractionDigits: 1 });

function inHours(tenths: number | null): string {
  return `${hours.format((tenths ?? 0) / 10)} h`;
}
