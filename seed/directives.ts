import { issueDirective } from '../apps/server/src/modules/directives/issue-directive.command.ts';
import { recordCompliance } from '../apps/server/src/modules/directives/record-compliance.command.ts';
import type { Calendar } from './calendar.ts';
import { compliances, type DirectiveSeed, directives } from './data/directives.ts';
import type { Reference } from './reference.ts';
import { presigned, type SeedRun } from './run.ts';

/** Directives put on record on their day, and what an inspector signed of them while a unit was here. */
export function seedDirectives(run: SeedRun, calendar: Calendar, ids: Reference): void {
  const issued = new Map<string, string>();
  for (const seed of directives)
    calendar.on(seed.issued + 1, 13.4, async () => issued.set(seed.number, await issue(run, ids, seed)));
  for (const { number, serial, on, method } of compliances)
    calendar.on(on, 21.2, async () => {
      const unit = await run.reads.serializedItem.findFirstOrThrow({ where: { serial, kind: 'assembly' } });
      const visit = await run.reads.workOrder.findFirstOrThrow({
        where: { unitId: unit.id },
        orderBy: { receivedOn: 'desc' },
      });
      await run.run(
        recordCompliance,
        {
          ...{ workOrderId: visit.id, directiveId: issued.get(number) as string, itemId: unit.id },
          ...{ outcome: 'done', method, signature: presigned },
        },
        { by: 'inspector' },
      );
    });
}

async function issue(run: SeedRun, { models }: Reference, seed: DirectiveSeed): Promise<string> {
  const { issued, effective, model, serials, ...said } = seed;
  const input = {
    ...{ ...said, issuedOn: run.day(issued), effectiveOn: run.day(effective), signature: presigned },
    lines: [{ modelId: models.get(model) as string, ...serials }],
  };
  return (await run.run(issueDirective, input, { by: 'inspector' })).id;
}
