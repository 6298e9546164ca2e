import { Problem } from '@hubwright/contracts/problems';
import { unitOperations } from '@hubwright/contracts/units/operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { requireAuthorisation } from '../people/public.ts';
import { latestTimes, recordTimes, TimesOnRecord } from './public.ts';

const operation = unitOperations.establishTimes;

/** Papers turn up after the unit did. What was recorded before stays; the newest record counts. */
export const establishTimes = defineCommand(operation, {
  locks: (input) => [`item:${input.itemId}`],
  async execute(context) {
    const { tx, input, actor, today, expectedVersion } = context;
    const item = found(await tx.serializedItem.findUnique({ where: { id: input.itemId } }), 'This part');
    sameVersion(item.version, expectedVersion);
    const need = { process: 'receiving-inspection', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const before = await refuseFewer(context);
    const { sinceNewTenths, sinceOverhaulTenths, sinceNewCycles, sinceNewOverhauls, basis } = input;
    await recordTimes(context, {
      itemId: item.id,
      on: today,
      sinceNewTenths: known(sinceNewTenths),
      sinceOverhaulTenths: known(sinceOverhaulTenths),
      sinceNewCycles: known(sinceNewCycles),
      sinceNewOverhauls: known(sinceNewOverhauls),
      meter: before?.meter ?? null,
      meterTenths: before?.meterTenths ?? null,
      basis,
    });
    const version = item.version + 1;
    await tx.serializedItem.update({ where: { id: item.id }, data: { version } });
    return {
      reply: { id: item.id, version },
      subjects: [{ kind: 'unit', id: item.id, before: item.version, after: version }],
      facts: { sinceNewTenths, sinceOverhaulTenths, sinceNewCycles, sinceNewOverhauls, basis },
      authorisation,
    };
  },
});

/**
 * Time since new only grows: a paper that says less than what is known by now, flying since the last paper included, is another part's,
 * or the record is wrong.
 */
async function refuseFewer({ tx, input, today }: Context<typeof operation>) {
  const before = await latestTimes(tx, input.itemId);
  const times = await TimesOnRecord.of(tx, [input.itemId]);
  const least = {
    sinceNewTenths: times.on(input.itemId, today).sinceNew.atLeastTenths,
    sinceNewCycles: times.on(input.itemId, today, 'cycles').sinceNew.atLeastTenths,
    sinceNewOverhauls: before?.sinceNewOverhauls ?? 0,
  };
  const fewer = (['sinceNewTenths', 'sinceNewCycles', 'sinceNewOverhauls'] as const).filter((field) => {
    const said = known(input[field]);
    return said !== null && said < least[field];
  });
  if (fewer.length === 0) return before;
  throw new Problem(
    'hours-wrong',
    'This is less than what is on record since new',
    {},
    fewer.map((field) => ({
      pointer: `/${field}`,
      detail: `Less than on record: at least ${told(field, least[field])}`,
    })),
  );
}

function told(field: string, least: number): string {
  return field === 'sinceNewTenths' ? `${(least / 10).toFixed(1)} h` : String(least);
}

function known(value: number | 'unknown'): number | null {
  return value === 'unknown' ? null : value;
}
