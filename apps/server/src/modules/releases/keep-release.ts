import type { Operation } from '@hubwright/contracts/operation';
import { type ReleaseContent, releaseOperations } from '@hubwright/contracts/releases/operations';
import type { Context } from '../../platform/command/command.ts';
import type { FileStore } from '../../platform/files/store.ts';
import type { HeldAuthorisation } from '../people/public.ts';
import { contentHashOf, writeSignOff } from '../work-orders/public.ts';
import { printRelease } from './print-release.ts';
import type { ReleaseFacts } from './release-facts.ts';

interface Signed {
  readonly files: FileStore;
  readonly facts: ReleaseFacts;
  readonly content: ReleaseContent;
  readonly authorisation: HeldAuthorisation;
}

/** Signs the record, archives its PDF and keeps both hashes. Nothing of it is ever changed. */
export async function keepRelease(
  context: Pick<Context<Operation>, 'tx' | 'now' | 'today' | 'actor' | 'entryId' | 'newId'>,
  { files, facts, content, authorisation }: Signed,
): Promise<{ releaseId: string; fileHash: string }> {
  const { workOrder, shop } = facts;
  const { word, number } = content;
  const { id: signOffId } = await writeSignOff(context, {
    workOrderId: workOrder.id,
    subject: { kind: 'release', id: workOrder.id },
    meaning: releaseOperations.approveRelease.signs ?? '',
    result: word,
    authorisation,
    revisionId: workOrder.revisionId,
    content,
  });
  const bytes = await printRelease(content, shop.name);
  const fileHash = await files.put(context, { bytes, mediaType: 'application/pdf', title: `Release ${number}` });
  const releaseId = context.newId();
  const hashes = { contentHash: contentHashOf(content), fileHash };
  const data = { ...hashes, id: releaseId, workOrderId: workOrder.id, number, word, content, signOffId };
  await context.tx.release.create({ data: { ...data, releasedAt: context.now } });
  return { releaseId, fileHash };
}
