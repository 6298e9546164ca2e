import type { Input } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { daysBetween } from '@hubwright/rules/dates';
import { normaliseSerial } from '@hubwright/rules/identity';
import type { Context } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { latestTimes } from '../units/public.ts';
import { refuseHours } from './check-arrival.ts';

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
  const last = known ? await latestTimes(tx, known.id) : null;
  const earlier = last
    ? { on: fromDbDate(last.recordedOn), sinceNewTenths: last.sinceNewTenths, sinceNewCycles: last.sinceNewCycles }
    : null;
  refuseHours(input, earlier, earlier ? Math.max(0, daysBetween(earlier.on, unit.on)) : 0);
}
