import type { Operation } from '@hubwright/contracts/operation';
import type { Context } from '../../platform/command/command.ts';
import { latestTimes, recordTimes, TimesOnRecord } from '../units/public.ts';
import { overhauledItems } from './release-content.ts';
import type { ReleaseFacts } from './release-facts.ts';

/**
 * An overhaul starts time since overhaul anew; time and cycles since new go on as they are computed for its day. The meter is what the aircraft showed when the unit came,
 * the best that is known until it flies again.
 */
export async function restartTimes(
  context: Pick<Context<Operation>, 'tx' | 'now' | 'newId'>,
  facts: ReleaseFacts,
  on: string,
): Promise<void> {
  const items = overhauledItems(facts);
  const times = await TimesOnRecord.of(context.tx, items);
  const known = (value: number | 'unknown') => (value === 'unknown' ? null : value);
  for (const itemId of items) {
    const before = await latestTimes(context.tx, itemId);
    await recordTimes(context, {
      itemId,
      on,
      sinceNewTenths: known(times.on(itemId, on).sinceNew.tenths),
      sinceOverhaulTenths: 0,
      sinceNewCycles: known(times.on(itemId, on, 'cycles').sinceNew.tenths),
      sinceNewOverhauls: before?.sinceNewOverhauls == null ? null : before.sinceNewOverhauls + 1,
      meter: before?.meter ?? null,
      meterTenths: before?.meterTenths ?? null,
      basis: 'overhaul',
      workOrderId: facts.workOrder.id,
    });
  }
}
