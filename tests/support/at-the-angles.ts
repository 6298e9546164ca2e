import { Job } from './job.ts';
import type { ShopApp } from './shop-app.ts';

/** A three-blade propeller put together with all its parts, its blade angles to be set next. */
export async function atTheAngles(shop: ShopApp, serial: string): Promise<Job> {
  const job = await Job.arrived(shop, serial);
  await job.inWork();
  await job.takenOff();
  await job.signed('repair');
  await job.filled();
  for (;;) {
    const step = await job.nextAt('assembly');
    if (step.title === 'Set blade angles') return job;
    await job.sign(step);
  }
}
