import { Problem } from '@hubwright/contracts/problems';
import { type ReleaseContent, releaseOperations } from '@hubwright/contracts/releases/operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import type { FileStore } from '../../platform/files/store.ts';
import { contentHashOf, requireAuthorisation } from '../people/public.ts';
import { keepRelease } from './keep-release.ts';
import { refuseOwnWork } from './own-work.ts';
import { approvalOf, approverOf, refuseIncomplete } from './release-content.ts';
import { type ReleaseFacts, releaseFacts } from './release-facts.ts';

const operation = releaseOperations.correctRelease;
type Correcting = Context<typeof operation>;

/** A release that says something wrong is never edited: a new version is signed, names the old one and says why. Both stay archived. */
export const correctRelease = (files: FileStore) =>
  defineCommand(operation, {
    async locks(input, tx) {
      const release = await tx.release.findUnique({ where: { id: input.releaseId }, select: { workOrderId: true } });
      return release ? [`work-order:${release.workOrderId}`] : [];
    },
    async execute(context) {
      const { tx, input, actor, today } = context;
      const old = await newestRelease(tx, input.releaseId);
      const facts = await releaseFacts(tx, old.workOrderId);
      const need = { process: 'return-to-service', level: 'approve', today } as const;
      const authorisation = await requireAuthorisation(tx, actor, need);
      refuseOwnWork(facts, actor.personId);
      const content = await correctedContent(context, facts, old);
      const { reason } = input;
      const kept = await keepRelease(context, {
        ...{ files, facts, content, authorisation, corrects: { ...old, reason } },
        meaning: `${operation.signs ?? ''}: ${reason}`,
      });
      const { number, word } = content;
      const { releaseId, releaseVersion, fileHash } = kept;
      return {
        reply: { id: releaseId, version: releaseVersion, number, word, fileHash },
        subjects: [
          { kind: 'release', id: releaseId, after: releaseVersion },
          { kind: 'release', id: old.id },
          { kind: 'work-order', id: old.workOrderId },
        ],
        authorisation: { ...authorisation },
        facts: { number, supersedes: old.number, contentHash: contentHashOf(content), fileHash },
        reason,
      };
    },
  });

async function newestRelease(tx: Tx, id: string) {
  const release = found(await tx.release.findUnique({ where: { id } }), 'This release');
  const newer = await tx.release.findUnique({ where: { supersedesId: id }, select: { id: true, number: true } });
  if (newer)
    throw new Problem('release-superseded', `${newer.number} took the place of ${release.number}`, {
      releaseId: newer.id,
    });
  return release;
}

type Release = Awaited<ReturnType<typeof newestRelease>>;

/** The words in their new form; unit, parts, times, work and its word stay as they were signed. */
async function correctedContent(context: Correcting, facts: ReleaseFacts, old: Release): Promise<ReleaseContent> {
  const { tx, input, actor, now } = context;
  const before = old.content as ReleaseContent;
  const words = {
    description: input.description ?? before.description,
    remarks: input.remarks ?? before.remarks,
    statement: input.statement ?? before.statement,
  };
  if ((['description', 'remarks', 'statement'] as const).every((field) => words[field] === before[field]))
    throw new Problem('nothing-corrected', `${old.number} says so already`, {}, [
      { pointer: '/description', detail: 'Nothing is different from before' },
    ]);
  const approver = await approverOf(tx, actor.personId, facts.shop);
  const { approvedBy } = approvalOf(facts, { approver, signedAt: now });
  const supersedes = { number: old.number, reason: input.reason };
  const content = { ...before, ...words, approvedBy, supersedes, number: numberOf(before, old.version + 1) };
  refuseIncomplete(facts, content, approver.id);
  return content;
}

/** `RS-0007`, corrected twice: `RS-0007-3`. */
function numberOf({ number, supersedes }: ReleaseContent, version: number): string {
  return `${supersedes ? number.replace(/-\d+$/, '') : number}-${version}`;
}
