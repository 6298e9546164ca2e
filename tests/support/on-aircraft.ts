import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { closeBuild } from '../../apps/server/src/modules/work-orders/close-build.command.ts';
import { readsOf } from './arrivals.ts';
import { Job } from './job.ts';
import { as, pin } from './people.ts';
import type { ShopApp } from './shop-app.ts';

/** A three-blade propeller that went through the shop and is released: it may be installed. */
export async function installed(shop: ShopApp, serial: string, whileOpen?: (job: Job) => Promise<void>): Promise<Job> {
  const job = await Job.arrived(shop, serial, { scope: 'reseal' });
  await whileOpen?.(job);
  await job.inWork();
  await job.signed('repair');
  await job.takenOff();
  await job.signed('build');
  await job.filled();
  await shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
  await job.signed('final');
  const { version } = await job.workOrder();
  const release = { workOrderId: job.id, signature: pin };
  const answer = await (await as(shop, 'sunniva')).call(releaseOperations.approveRelease, release, { version });
  if (answer.status !== 200) throw new Error(`${job.number} is not released: ${JSON.stringify(answer.body)}`);
  return job;
}

/** The order that plans a balance of that propeller on its aircraft. */
export async function planning(job: Job) {
  const { customerId, aircraftId } = await job.workOrder();
  return {
    ...{ customerId, aircraftId: aircraftId ?? '', unitId: job.unitId, airport: 'Brackenmoor Field' },
    ...{ plannedOn: '2026-12-01', reason: 'Balance after installation' },
  };
}

export async function analyser(shop: ShopApp): Promise<string> {
  return (await readsOf(shop).instrument.findUniqueOrThrow({ where: { tag: 'VIB-01' } })).id;
}

/** An accepted lot of a balance weight in its bin, by part number. */
export async function weightsOnShelf(job: Job, number: string, quantity: number): Promise<string> {
  const part = await job.reads.part.findUniqueOrThrow({ where: { number } });
  return job.onShelf(part.id, quantity);
}
