import type { Sent } from '@hubwright/contracts/operation';
import type { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { Reads } from '../../apps/server/src/platform/database/reads.ts';
import type { ShopApp } from './shop-app.ts';

export type Arrival = Sent<typeof workOrderOperations.receiveUnit>;

/** What can be read of the invented shop. */
export function readsOf(shop: ShopApp): Reads['models'] {
  return shop.running.app.get(Reads).models;
}

/** A three-blade constant-speed propeller at the dock, every serial readable, for the air charter's single. */
export async function threeBlade(shop: ShopApp, serial: string, changes: Partial<Arrival> = {}): Promise<Arrival> {
  const reads = readsOf(shop);
  const customer = await reads.customer.findUniqueOrThrow({ where: { code: 'BRACKEN' } });
  const aircraft = await reads.aircraft.findUniqueOrThrow({ where: { registration: 'ZZ-BMD' } });
  const model = await reads.unitModel.findFirstOrThrow({ where: { designation: 'Q3C-76' } });
  const application = await reads.application.findFirstOrThrow({
    where: { modelId: model.id, airframe: aircraft.airframe },
  });
  return {
    customerId: customer.id,
    aircraftId: aircraft.id,
    modelId: model.id,
    applicationId: application.id,
    scope: 'overhaul',
    serial,
    parts: [
      { kind: 'hub', position: 'hub', partNumber: 'Q301-61', serial: `H-${serial}` },
      ...[1, 2, 3].map((blade) => ({
        kind: 'blade' as const,
        position: `blade ${blade}`,
        partNumber: 'Q76-B',
        serial: `B${blade}-${serial}`,
      })),
    ],
    times: { sinceNewTenths: 21_004, sinceOverhaulTenths: 18_231, meter: 'tachometer', meterTenths: 28_401 },
    reason: 'time between overhauls reached',
    paperwork: ['logbook', 'removal-tag'],
    looseItems: [
      { description: 'spinner dome', quantity: 1 },
      { description: 'mounting nuts', quantity: 6 },
    ],
    ...changes,
  };
}

/** What makes the arrival a four-blade feathering propeller with serialized clamps, for a twin whose aircraft is not on record. */
export async function fourBlade(shop: ShopApp, serial: string): Promise<Partial<Arrival>> {
  const reads = readsOf(shop);
  const model = await reads.unitModel.findFirstOrThrow({ where: { designation: 'Q4F-84' } });
  const application = await reads.application.findFirstOrThrow({ where: { modelId: model.id, position: 'left' } });
  const times = { sinceNewTenths: 88_200, sinceOverhaulTenths: 39_700 };
  const part = (kind: 'hub' | 'blade' | 'clamp', position: string, partNumber: string) => ({
    ...{ kind, position, partNumber, serial: `${position.replace(' ', '')}-${serial}` },
    ...times,
  });
  return {
    modelId: model.id,
    applicationId: application.id,
    aircraftId: undefined,
    parts: [
      part('hub', 'hub', 'Q401-61'),
      ...[1, 2, 3, 4].flatMap((n) => [part('blade', `blade ${n}`, 'Q84-B'), part('clamp', `clamp ${n}`, 'Q401-64')]),
    ],
    times: { ...times, meter: 'tachometer' },
  };
}

/** The same with serialized steel counterweights, which are plated and baked. */
export async function fourBladeWithCounterweights(shop: ShopApp, serial: string, count = 2): Promise<Partial<Arrival>> {
  const whole = await fourBlade(shop, serial);
  const weights = Array.from({ length: count }, (_, index) => index + 1).map((n) => ({
    ...{
      kind: 'counterweight' as const,
      position: `counterweight ${n}`,
      partNumber: 'Q401-65',
      serial: `W${n}-${serial}`,
    },
    ...{ sinceNewTenths: 88_200, sinceOverhaulTenths: 39_700 },
  }));
  return { ...whole, parts: [...(whole.parts ?? []), ...weights] };
}

/** What makes the arrival a propeller of five composite blades. */
export async function composite(shop: ShopApp, serial: string): Promise<Partial<Arrival>> {
  const reads = readsOf(shop);
  const model = await reads.unitModel.findFirstOrThrow({ where: { designation: 'SW5-83' } });
  const application = await reads.application.findFirstOrThrow({ where: { modelId: model.id } });
  const times = { sinceNewTenths: 61_000, sinceOverhaulTenths: 44_000 };
  const part = (kind: 'hub' | 'blade', position: string, partNumber: string) => ({
    ...{ kind, position, partNumber, serial: `${position.replace(' ', '')}-${serial}` },
    ...times,
  });
  return {
    ...{ modelId: model.id, applicationId: application.id, aircraftId: undefined },
    parts: [part('hub', 'hub', 'S501-61'), ...[1, 2, 3, 4, 5].map((n) => part('blade', `blade ${n}`, 'S83-B'))],
    times: { ...times, meter: 'tachometer' },
  };
}

/** Hours nobody could tell. */
export const unknownTimes: Arrival['times'] = { sinceNewTenths: 'unknown', sinceOverhaulTenths: 'unknown' };
