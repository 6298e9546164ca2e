import type { Input } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { normaliseSerial } from '@hubwright/rules/identity';
import type { Context } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { TimesOnRecord } from '../units/public.ts';
import { type EarlierTimes, refuseHours } from './check-arrival.ts';

type Arrival = Input<typeof workOrderOperations.receiveUnit>;

/** An aircraft of another customer or an application of another model is a slip of the desk. */
export async function refuseForeign(tx: Tx, input: Arrival): Promise<void> {
  const { aircraftId, applicationId } = input;
  const wrong = (pointer: string, detail: string) =>
    new Problem('application-wrong', detail, {}, [{ pointer, detail }]);
  if (aircraftId) {
    const aircraft = found(await tx.aircraft.findUnique({ where: { id: aircraftId } }), 'This aircraft');
    if (aircraft.customerId !== input.customerId)
      throw wrong('/aircraftId', `${aircraft.registration} belongs to another customer`);
  }
  if (applicationId) {
    const application = found(await tx.application.findUnique({ where: { id: applicationId } }), 'This application');
    if (application.modelId !== input.modelId) throw wrong('/applicationId', 'This application is of another model');
  }
}

/** Hours against what the shop recorded when it last had this unit. */
export async function refuseWrongHours(
  { tx, input }: Pick<Context<typeof workOrderOperations.receiveUnit>, 'tx' | 'input'>,
  unit: { maker: string; designation: string; on: string },
): Promise<void> {
  const serial = input.serial === null ? null : normaliseSerial(input.serial);
  const known = serial
    ? await tx.serializedItem.findUnique({
        where: { maker_partNumber_serial: { maker: unit.maker, partNumber: unit.designation, serial } },
      })
    : null;
  refuseHours(input, known ? await earlierTimes(tx, known.id) : null, unit.on);
}

/**
 * What it had on the day of its newest paper. What readings add since then may be disputed: a declaration that says less is not refused
 * here, it is shown on the unit's page to be asked about.
 */
async function earlierTimes(tx: Tx, itemId: string): Promise<EarlierTimes | null> {
  const times = await TimesOnRecord.of(tx, [itemId]);
  const on = times.paperDays(itemId).at(-1);
  if (on === undefined) return null;
  const hours = times.on(itemId, on).sinceNew;
  const cycles = times.on(itemId, on, 'cycles').sinceNew;
  // A paper of the very day it left says what it had, though nobody can know what it flew later that day.
  const saidThatDay = hours.start?.date === on && hours.start.tenths !== 'unknown';
  const tenths = saidThatDay ? hours.atLeastTenths : hours.tenths;
  return { on, tenths, atLeastTenths: hours.atLeastTenths, atLeastCycles: cycles.atLeastTenths };
}
