import { findingOperations } from '@hubwright/contracts/findings/operations';
import type { PartClass } from '@hubwright/contracts/manuals/words';
import { Problem } from '@hubwright/contracts/problems';
import { normaliseSerial } from '@hubwright/rules/identity';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { requireAuthorisation } from '../people/public.ts';
import { findOrCreateItem, install, recordTimes } from '../units/public.ts';
import { refuseOutsideWork } from './write-finding.ts';

const operation = findingOperations.fitReplacement;

/** A replacement is another part with times of its own: it never takes over those of the part it replaces. */
export const fitReplacement = defineCommand(operation, {
  async locks(input, tx) {
    const finding = await tx.finding.findUnique({ where: { id: input.findingId }, select: { workOrderId: true } });
    return [...(finding ? [`work-order:${finding.workOrderId}`] : []), `serial:${normaliseSerial(input.serial)}`];
  },
  async execute(context) {
    const { tx, input, actor, today } = context;
    const authorisation = await requireAuthorisation(tx, actor, { process: 'assembly', level: 'perform', today });
    const finding = await replaceable(context);
    const { traveler, workOrder, number } = finding;
    const { item } = await findOrCreateItem(context, {
      kind: traveler.partClass as PartClass,
      modelId: null,
      maker: input.maker,
      partNumber: input.partNumber,
      serial: input.serial,
      provisionalName: null,
    });
    const from = await refuseUnfit(context, item, workOrder);
    await install(context, { itemId: item.id, parentId: workOrder.unitId, position: traveler.position, from: today });
    await recordTimes(context, {
      itemId: item.id,
      on: today,
      sinceNewTenths: known(input.sinceNewTenths),
      sinceOverhaulTenths: known(input.sinceOverhaulTenths),
      sinceNewCycles: known(input.sinceNewCycles),
      basis: `replacement on ${workOrder.number}`,
      workOrderId: workOrder.id,
    });
    return {
      reply: { id: finding.id, version: finding.version, itemId: item.id },
      subjects: [
        { kind: 'finding', id: finding.id },
        { kind: 'unit', id: workOrder.unitId },
        { kind: 'unit', id: item.id },
        { kind: 'work-order', id: workOrder.id },
      ],
      authorisation: { ...authorisation },
      facts: { from, number, position: traveler.position, replaced: traveler.itemId, serial: item.serial },
    };
  },
});

/**
 * A part sits in one place, and what an inspector rejected does not come back as its own replacement. Out of another unit it comes only
 * where that one is here, goes through no release any more and has the same owner. Answers the order it comes from.
 */
async function refuseUnfit(
  { tx }: Context<typeof operation>,
  item: { id: string; partNumber: string; serial: string | null },
  workOrder: { customerId: string },
): Promise<string | null> {
  const name = `${item.partNumber} ${item.serial}`;
  const elsewhere = await tx.installation.findFirst({ where: { itemId: item.id, toDate: null } });
  const donor = elsewhere
    ? await tx.workOrder.findFirst({
        where: {
          ...{ unitId: elsewhere.parentId, customerId: workOrder.customerId, shippedAt: null, closedAt: null },
          stage: { in: ['returning-unrepaired', 'scrapped'] },
        },
        select: { number: true },
      })
    : null;
  if (elsewhere && !donor) throw new Problem('already-in-shop', `${name} is installed in another unit on record`);
  const rejected = await tx.finding.findFirst({
    where: { disposition: 'reject', traveler: { itemId: item.id } },
    orderBy: { raisedAt: 'desc' },
    select: { number: true },
  });
  if (rejected) throw new Problem('part-rejected', `${name} was rejected by ${rejected.number}`);
  return donor?.number ?? null;
}

async function replaceable({ tx, input }: Context<typeof operation>) {
  const finding = found(
    await tx.finding.findUnique({ where: { id: input.findingId }, include: { traveler: true, workOrder: true } }),
    'This finding',
  );
  refuseOutsideWork(finding.workOrder);
  const { traveler, workOrder } = finding;
  if (finding.disposition !== 'reject' || traveler.partClass === 'assembly') {
    throw new Problem('nothing-to-replace', `${finding.number} did not reject a part of the unit`);
  }
  const there = await tx.installation.findFirst({
    where: { parentId: workOrder.unitId, position: traveler.position, toDate: null },
  });
  if (there) throw new Problem('replacement-known', `${traveler.position} holds a part already`);
  return finding;
}

function known(tenths: number | 'unknown'): number | null {
  return tenths === 'unknown' ? null : tenths;
}
