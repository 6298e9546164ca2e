import type { Operation } from '@hubwright/contracts/operation';
import type { ReleaseContent } from '@hubwright/contracts/releases/operations';
import type { Context } from '../../platform/command/command.ts';
import type { FileStore } from '../../platform/files/store.ts';
import { contentHashOf, type HeldAuthorisation, writeSignOff } from '../people/public.ts';
import { printRelease } from './print-release.ts';
import type { ReleaseFacts } from './release-facts.ts';

interface Signed {
  readonly files: FileStore;
  readonly facts: ReleaseFacts;
  readonly content: ReleaseContent;
  readonly authorisation: HeldAuthorisation;
  /** The sentence signed. */
  readonly meaning: string;
  /** The release this one corrects. */
  readonly corrects?: {
    readonly id: string;
    readonly signOffId: string;
    readonly version: number;
    readonly reason: string;
  };
}

/** Signs the record, archives its PDF and keeps both hashes. Nothing of it is ever changed. */
export async function keepRelease(
  context: Pick<Context<Operation>, 'tx' | 'now' | 'today' | 'actor' | 'entryId' | 'newId' | 'signOffs'>,
  { files, facts, content, authorisation, meaning, corrects }: Signed,
): Promise<{ releaseId: string; fileHash: string; releaseVersion: number }> {
  const { workOrder, shop } = facts;
  const { word, number } = content;
  const { id: signOffId } = await writeSignOff(context, {
    workOrderId: workOrder.id,
    subject: { kind: 'release', id: workOrder.id },
    meaning,
    result: word,
    authorisation,
    revisionId: workOrder.revisionId,
    content,
    ...(corrects ? { supersedesId: corrects.signOffId } : {}),
  });
  const bytes = await printRelease(content, shop.name);
  const fileHash = await files.put(context, { bytes, mediaType: 'application/pdf', title: `Release ${number}` });
  const releaseId = context.newId();
  const hashes = { contentHash: contentHashOf(content), fileHash };
  const data = { ...hashes, id: releaseId, workOrderId: workOrder.id, number, word, content, signOffId };
  const version = (corrects?.version ?? 0) + 1;
  await context.tx.release.create({
    data: {
      ...data,
      version,
      supersedesId: corrects?.id ?? null,
      reason: corrects?.reason ?? '',
      releasedAt: context.now,
      entryId: context.entryId,
    },
  });
  return { releaseId, fileHash, releaseVersion: version };
}
