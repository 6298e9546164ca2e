import { lifeVerdict } from '@hubwright/rules/due';
import type { Tx } from '../../platform/database/client.ts';
import { lifeLimitsOf } from '../manuals/public.ts';
import { latestTimes } from '../units/public.ts';
import { type Holders, item, type OpenItem } from './open-item.ts';
import type { ReleaseFacts } from './release-facts.ts';

/**
 * Fitted parts, the unit itself included, that the work's manual revision limits in life and whose total since new is not known
 * or used up. The current approved manual and its airworthiness limitations decide; this list only names them.
 */
export async function lifeItems(tx: Tx, facts: ReleaseFacts, holders: Holders): Promise<OpenItem[]> {
  const { workOrder, installations } = facts;
  const limits = await lifeLimitsOf(tx, workOrder);
  if (limits.size === 0) return [];
  const fitted = [
    { position: 'the unit', item: workOrder.unit, times: [await latestTimes(tx, workOrder.unitId)] },
    ...installations.map(({ position, item: part }) => ({ position, item: part, times: part.times })),
  ];
  return fitted.flatMap(({ position, item: part, times: [newest] }) => {
    const limit = limits.get(part.partNumber.toUpperCase());
    if (!limit) return [];
    const verdict = lifeVerdict(given(limit), {
      hoursTenths: newest?.sinceNewTenths ?? 'unknown',
      cycles: newest?.sinceNewCycles ?? 'unknown',
    });
    if (verdict.state === 'within') return [];
    const name = `${position}, ${part.partNumber} serial ${part.serial ?? 'not read'}`;
    const bounds = verdict.by.map((measure) =>
      measure === 'cycles' ? (limit.cycles === 1 ? '1 cycle' : `${limit.cycles} cycles`) : inHours(limit.hoursTenths),
    );
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

function given({ hoursTenths, cycles }: { hoursTenths: number | null; cycles: number | null }) {
  return { ...(hoursTenths === null ? {} : { hoursTenths }), ...(cycles === null ? {} : { cycles }) };
}

const hours = new Intl.NumberFormat('en-US', { minimumFractionDigits: 1, maximumFractionDigits: 1 });

function inHours(tenths: number | null): string {
  return `${hours.format((tenths ?? 0) / 10)} h`;
}
