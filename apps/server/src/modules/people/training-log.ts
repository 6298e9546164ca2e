import type { Input } from '@hubwright/contracts/operation';
import type { trainingOperations } from '@hubwright/contracts/people/training-operations';
import { Problem } from '@hubwright/contracts/problems';
import { trainingDue } from '@hubwright/rules/training';
import type { Context } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { type FileStore, fileLock } from '../../platform/files/store.ts';

type Operations = typeof trainingOperations;
type Entry = Omit<Input<Operations['logTraining']>, 'personId'>;
type Logging = Omit<Context<Operations['logTraining']>, 'input'>;

/** Against the pruning of a paper while it is being named. */
export async function trainingLocks(tx: Tx, entry: Pick<Entry, 'fileId'>): Promise<string[]> {
  if (entry.fileId === undefined) return [];
  const staged = await tx.stagedFile.findUnique({ where: { id: entry.fileId } });
  return staged ? [fileLock(staged.hash)] : [];
}

/** One line of a person's training log; `corrects` names the line it takes the place of. */
export async function writeTraining(
  { files, context }: { files: FileStore; context: Logging },
  entry: Entry,
  line: { personId: string; corrects?: { id: string; reason: string; paper: Paper } },
): Promise<{ id: string; dueOn: string | null; title: string }> {
  const { tx, today, now, actor, entryId } = context;
  if (entry.heldOn > today)
    throw new Problem('training-in-future', `The training is dated ${entry.heldOn}`, {}, [
      { pointer: '/heldOn', detail: 'Log it once it was held' },
    ]);
  const item = entry.itemId
    ? found(await tx.trainingItem.findUnique({ where: { id: entry.itemId } }), 'This training')
    : undefined;
  const title = item?.title ?? entry.title;
  if (title === undefined)
    throw new Problem('training-unnamed', 'It is not said what the training was', {}, [
      { pointer: '/title', detail: 'Choose one of the list or write what it was' },
    ]);
  const dueOn = dueOf(entry, item?.everyMonths ?? null);
  const paper = (await keepPaper({ files, context }, entry, title)) ?? line.corrects?.paper;
  const id = context.newId();
  const { kind, givenBy, minutes, result } = entry;
  await tx.trainingRecord.create({
    data: {
      ...{ id, personId: line.personId, itemId: item?.id ?? null, title, kind, givenBy, minutes, result },
      ...{ heldOn: toDbDate(entry.heldOn), dueOn: dueOn === null ? null : toDbDate(dueOn) },
      ...{ paperHash: paper?.paperHash ?? null, paperName: paper?.paperName ?? null },
      ...{ supersedesId: line.corrects?.id ?? null, reason: line.corrects?.reason ?? '' },
      ...{ recordedBy: actor.personId, recordedAt: now, entryId },
    },
  });
  return { id, dueOn, title };
}

interface Paper {
  readonly paperHash: string | null;
  readonly paperName: string | null;
}

function dueOf({ heldOn, dueOn, result }: Entry, everyMonths: number | null): string | null {
  if (dueOn !== undefined && dueOn < heldOn)
    throw new Problem('training-due-wrong', `The training was held on ${heldOn}`, {}, [
      { pointer: '/dueOn', detail: 'This lies before the training' },
    ]);
  return dueOn ?? (result === 'passed' ? trainingDue(heldOn, everyMonths) : null);
}

/** Only the one who sent a paper names it. */
async function keepPaper(
  { files, context }: { files: FileStore; context: Logging },
  { fileId }: Entry,
  title: string,
): Promise<Paper | undefined> {
  if (fileId === undefined) return undefined;
  const { tx, actor } = context;
  const staged = await tx.stagedFile.findFirst({ where: { id: fileId, uploadedBy: actor.personId } });
  if (!staged) throw new Problem('upload-gone', 'You have sent no such file, or it waited longer than a day');
  const { hash, size, mediaType } = staged;
  await files.name(context, [{ hash, size, mediaType, title: `Training: ${title}` }]);
  return { paperHash: hash, paperName: mediaType === 'application/pdf' ? 'training.pdf' : 'training.jpg' };
}
