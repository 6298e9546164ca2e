import { Problem } from '@hubwright/contracts/problems';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { nextNumber } from '../../platform/database/counters.ts';
import type { FileStore } from '../../platform/files/store.ts';
import { contentHashOf, requireAuthorisation } from '../people/public.ts';
import { writeCarried } from '../units/public.ts';
import { advance } from '../work-orders/public.ts';
import { keepRelease } from './keep-release.ts';
import { openItems } from './open-items.ts';
import { refuseOwnWork } from './own-work.ts';
import { approverOf, lastPerformedOn, refuseIncomplete, releaseContent } from './release-content.ts';
import { type ReleaseFacts, releaseFacts } from './release-facts.ts';
import { restartTimes } from './restart-times.ts';

const operation = releaseOperations.approveRelease;
type Approving = Context<typeof operation>;

/** The release is the authorised person's act; the server refuses while anything is open and makes the record of it. */
export const approveRelease = (files: FileStore) =>
  defineCommand(operation, {
    locks: (input) => [`work-order:${input.workOrderId}`],
    async execute(context) {
      const { tx, input, actor, today, now, expectedVersion } = context;
      const facts = await releaseFacts(tx, input.workOrderId);
      const { workOrder } = facts;
      sameVersion(workOrder.version, expectedVersion);
      if (workOrder.releasedAt) throw new Problem('already-released', `${workOrder.number} has been released`);
      const authorisation = await requireAuthorisation(tx, actor, {
        process: 'return-to-service',
        level: 'approve',
        today,
      });
      refuseOwnWork(facts, actor.personId);
      await refuseOpen(context, facts);
      refuseWrongDay(context, facts);
      const content = await recordOf(context, facts);
      const meaning = operation.signs ?? '';
      const { releaseId, fileHash } = await keepRelease(context, { files, facts, content, authorisation, meaning });
      if (content.word === 'overhauled') await restartTimes(context, facts, content.completedOn);
      await keepDiameter(context, facts);
      const moved = await advance(context, workOrder, {
        action: 'approve-return-to-service',
        set: { releasedAt: now },
      });
      const { number, word } = content;
      return {
        reply: { ...moved, releaseId, fileHash, number, word },
        subjects: [
          { kind: 'work-order', id: workOrder.id, before: workOrder.version, after: moved.version },
          { kind: 'release', id: releaseId, after: 1 },
          { kind: 'unit', id: workOrder.unitId },
        ],
        authorisation: { ...authorisation },
        facts: { number, word, contentHash: contentHashOf(content), fileHash },
      };
    },
  });

/** A shortened propeller has its new diameter on record from its release on. */
async function keepDiameter(context: Approving, { workOrder }: ReleaseFacts): Promise<void> {
  const { id, unitId, number, shortenTo } = workOrder;
  if (shortenTo === null) return;
  const fact = { kind: 'diameter', place: '', value: shortenTo, basis: `shortened on ${number}` } as const;
  await writeCarried(context, { ...fact, itemId: unitId, workOrderId: id });
}

async function refuseOpen({ tx, today }: Approving, facts: ReleaseFacts): Promise<void> {
  const open = await openItems(tx, facts, today);
  if (open.length === 0) return;
  const named = open.slice(0, 5).map(({ what }) => what);
  const more = open.length > named.length ? ` and ${open.length - named.length} more` : '';
  throw new Problem('release-blocked', `Still open: ${named.join('; ')}${more}`, { open });
}

function refuseWrongDay({ input, today }: Approving, facts: ReleaseFacts): void {
  const { completedOn } = input;
  if (completedOn === undefined || (completedOn <= today && completedOn >= lastPerformedOn(facts))) return;
  throw new Problem(
    'invalid-input',
    'Work is completed on or after the day of its last step, and not in the future',
    {},
    [{ pointer: '/completedOn', detail: `Between ${lastPerformedOn(facts)} and ${today}` }],
  );
}

async function recordOf({ tx, input, actor, now }: Approving, facts: ReleaseFacts) {
  const approver = await approverOf(tx, actor.personId, facts.shop);
  const content = await releaseContent(tx, facts, {
    number: await nextNumber(tx, 'RS', 4),
    approver,
    signedAt: now,
    remarks: input.remarks,
    completedOn: input.completedOn,
  });
  refuseIncomplete(facts, content, approver.id);
  return content;
}
