import type { Input, Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { normaliseSerial } from '@hubwright/rules/identity';
import type { Context } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import {
  endOnArrival,
  findOrCreateItem,
  type ItemIdentity,
  install,
  keepOnArrival,
  openInstallations,
  recordTimes,
  uninstall,
} from '../units/public.ts';

type Arrival = Input<typeof workOrderOperations.receiveUnit>;
type Booking = Pick<Context<Operation>, 'tx' | 'now' | 'today' | 'actor' | 'newId'>;

/** The model as far as identity needs it. */
export interface ArrivingModel {
  readonly id: string;
  readonly maker: string;
  readonly designation: string;
}

/** Identity is maker + part number + serial; until a serial is read, the place on this work order names the item. */
export function identities(input: Arrival, model: ArrivingModel, number: string): ItemIdentity[] {
  const unit: ItemIdentity = {
    kind: 'assembly',
    modelId: model.id,
    maker: model.maker,
    partNumber: model.designation,
    serial: input.serial,
    provisionalName: input.serial === null ? `unit of ${number}` : null,
  };
  const parts = input.parts.map((part) => ({
    kind: part.kind,
    modelId: null,
    maker: part.maker ?? model.maker,
    partNumber: part.partNumber,
    serial: part.serial,
    provisionalName: part.serial === null ? `${part.position} of ${number}` : null,
  }));
  return [unit, ...parts];
}

/** Refuses a unit or part that an open work order already has, naming that work order; `/serial` is the unit's, `/parts/0/serial` the first part's. */
export async function refuseInShop(tx: Tx, arriving: readonly ItemIdentity[]): Promise<void> {
  for (const [index, { maker, partNumber, serial }] of arriving.entries()) {
    if (serial === null) continue;
    const identity = { maker, partNumber, serial: normaliseSerial(serial) };
    const open = await tx.workOrder.findFirst({
      where: {
        closedAt: null,
        OR: [
          { unit: identity },
          { unit: { parts: { some: { toDate: null, item: identity } } } },
          { travelers: { some: { item: identity } } },
        ],
      },
      select: { id: true, number: true, stage: true },
    });
    if (!open) continue;
    const pointer = index === 0 ? '/serial' : `/parts/${index - 1}/serial`;
    const what = `${maker} ${partNumber} serial ${identity.serial}`;
    const detail =
      open.stage === 'shipped'
        ? `${what} left with ${open.number}, which is not closed yet`
        : `${what} is already here on ${open.number}`;
    throw new Problem('already-in-shop', detail, { workOrder: open }, [{ pointer, detail }]);
  }
}

/**
 * Makes or finds the unit and its parts, puts each part at its position and takes out what sat there. Times are written as
 * declared; unknown stays unknown. Answers the ids in the order of `identities`.
 */
export async function bookIn(
  context: Booking,
  input: Arrival,
  arrival: { identities: readonly ItemIdentity[]; on: string; workOrderId: string; number: string },
): Promise<string[]> {
  const ids: string[] = [];
  for (const identity of arrival.identities) ids.push((await findOrCreateItem(context, identity)).item.id);
  const [unitId = '', ...partIds] = ids;
  const { meter = null, meterTenths = null } = input.times;
  await endOnArrival(context, unitId, { on: arrival.on, number: arrival.number, meter, meterTenths });
  await keepOnArrival(context, unitId, {
    ...{ on: arrival.on, number: arrival.number },
    ...{ aircraftId: input.aircraftId ?? null, use: input.use ?? null, madeOn: input.madeOn ?? null },
  });
  for (const sitting of await openInstallations(context.tx, unitId))
    if (!partIds.includes(sitting.itemId))
      await uninstall(context, { itemId: sitting.itemId, on: arrival.on, foundOnArrival: true });
  for (const [index, part] of input.parts.entries())
    await install(context, {
      itemId: partIds[index] ?? '',
      parentId: unitId,
      position: part.position,
      from: arrival.on,
      foundOnArrival: true,
    });
  await declareTimes(context, { input, ids, on: arrival.on, workOrderId: arrival.workOrderId });
  return ids;
}

async function declareTimes(
  context: Booking,
  declared: { input: Arrival; ids: readonly string[]; on: string; workOrderId: string },
): Promise<void> {
  const { input, ids, on, workOrderId } = declared;
  const known = (declared: number | 'unknown') => (declared === 'unknown' ? null : declared);
  for (const [index, itemId] of ids.entries()) {
    const part = index === 0 ? undefined : input.parts[index - 1];
    const hours = part ?? input.times;
    await recordTimes(context, {
      itemId,
      on,
      workOrderId,
      basis: 'declared on receipt',
      sinceNewTenths: known(hours.sinceNewTenths),
      sinceOverhaulTenths: known(hours.sinceOverhaulTenths),
      sinceNewCycles: known(hours.sinceNewCycles),
      ...(part ? {} : { meter: input.times.meter ?? null, meterTenths: input.times.meterTenths ?? null }),
    });
  }
}
