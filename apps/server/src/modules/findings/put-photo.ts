import type { PhotoSubject } from '@hubwright/contracts/files/operations';
import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { Context, Subject } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import { type FileStore, fileLock } from '../../platform/files/store.ts';

/** What a photo is put beside: the chains it is recorded in, and the visit it belongs to. */
interface Shown {
  readonly kind: PhotoSubject;
  readonly id: string;
  readonly name: string;
  readonly workOrder: { readonly id: string; readonly number: string; readonly closedAt: Date | null };
  readonly chains: readonly Subject[];
}
interface PhotoInput {
  readonly fileId: string;
  readonly title: string;
  readonly takenAt?: string | undefined;
}
type Photographing = Omit<Context<Operation>, 'input'>;

export const workOrder = { select: { id: true, number: true, closedAt: true } } as const;
const minute = 60_000;

/** Against the pruning of a file while it is being named. */
export async function locksOf({ fileId }: PhotoInput, tx: Tx): Promise<string[]> {
  const staged = await tx.stagedFile.findUnique({ where: { id: fileId } });
  return staged ? [staged.hash, staged.thumbnailHash].flatMap((hash) => (hash ? [fileLock(hash)] : [])) : [];
}

/** Only the one who sent a file names it; after that anyone who sees the subject sees the photo. */
export async function addPhoto(
  { files, context, input }: { files: FileStore; context: Photographing; input: PhotoInput },
  shown: Shown,
) {
  const { tx, actor, now, entryId } = context;
  const { title } = input;
  const takenAt = takenAtOf(input, now);
  if (shown.workOrder.closedAt) throw new Problem('wrong-state', `${shown.workOrder.number} is closed`);
  const staged = await tx.stagedFile.findFirst({ where: { id: input.fileId, uploadedBy: actor.personId } });
  if (!staged) throw new Problem('upload-gone', 'You have sent no such file, or it waited longer than a day');
  const { hash, size, mediaType, width, height, thumbnailHash, thumbnailSize } = staged;
  await files.name(context, [
    { hash, size, mediaType, title },
    ...(thumbnailHash ? [{ hash: thumbnailHash, size: thumbnailSize ?? 0, mediaType, title: `Small: ${title}` }] : []),
  ]);
  const id = context.newId();
  const of = { subjectKind: shown.kind, subjectId: shown.id, workOrderId: shown.workOrder.id };
  const picture = { fileHash: hash, thumbnailFileHash: thumbnailHash, mediaType, width, height };
  await tx.photo.create({
    data: { id, ...of, ...picture, title, takenAt, addedBy: actor.personId, addedAt: now, entryId },
  });
  const subjects: readonly [Subject, ...Subject[]] = [{ kind: 'photo', id, after: 1 }, ...shown.chains];
  return {
    subjects,
    reply: { id, version: 1, fileHash: hash },
    facts: {
      ...{ shows: shown.name, title, fileHash: hash, thumbnailFileHash: thumbnailHash, mediaType },
      takenAt: takenAt?.toISOString() ?? null,
    },
  };
}

function takenAtOf({ takenAt }: PhotoInput, now: Date): Date | null {
  if (!takenAt) return null;
  const at = new Date(takenAt);
  if (at.getTime() <= now.getTime() + 10 * minute) return at;
  throw new Problem('invalid-input', 'The photo was taken in the future', {}, [
    { pointer: '/takenAt', detail: 'Set the clock of the device' },
  ]);
}

export const chainOf = ({ workOrder: { id } }: Pick<Shown, 'workOrder'>): Subject => ({ kind: 'work-order', id });
