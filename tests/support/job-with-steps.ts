import type { ModelContent } from '@hubwright/contracts/manuals/revision';
import { issueRevision } from '../../apps/server/src/modules/manuals/issue-revision.command.ts';
import type { StepSeed } from '../../seed/data/manuals/shapes.ts';
import { readsOf } from './arrivals.ts';
import { day } from './days.ts';
import { Job } from './job.ts';
import { threeBladeContent } from './manual-content.ts';
import { actorOf } from './people.ts';
import type { ShopApp } from './shop-app.ts';

/** A three-blade propeller whose blades go through these steps alone, in teardown: a revision of its manual says so. */
export async function jobWithSteps(shop: ShopApp, serial: string, steps: readonly StepSeed[]): Promise<Job> {
  const model = await readsOf(shop).unitModel.findFirstOrThrow({ where: { designation: 'Q3C-76' } });
  const whole = await threeBladeContent(shop);
  const routes = whole.routes.map((route) =>
    route.partClass === 'blade'
      ? { ...route, steps: steps.map((step) => ({ ...step, phase: 'evaluation' as const })) }
      : route,
  );
  const content = { ...whole, routes, modelId: model.id, tboRules: [] } as unknown as ModelContent;
  const revision = { manualId: model.manualId, revision: serial, issuedOn: day(-1), models: [content] };
  await shop.run(issueRevision, revision, await actorOf(shop, 'inspector'));
  const job = await Job.arrived(shop, serial);
  await job.tornDown();
  return job;
}
