import type { ModelContent } from '@hubwright/contracts/manuals/revision';
import type { Operation } from '@hubwright/contracts/operation';
import type { Context, Subject } from '../../platform/command/command.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { refuseWrongContent } from './check-content.ts';
import { writeContent } from './write-content.ts';

interface RevisionToIssue {
  readonly manual: { readonly id: string; readonly number: string };
  readonly revision: string;
  readonly issuedOn: string;
  readonly models: readonly ModelContent[];
}

/** The whole revision in one transaction: it is current when it is there, and the one before no longer is. */
export async function issueContent(
  context: Pick<Context<Operation>, 'tx' | 'newId'>,
  { manual, revision, issuedOn, models }: RevisionToIssue,
) {
  const { tx, newId } = context;
  const partIds = await refuseWrongContent(tx, manual, models);
  const before = await tx.manualRevision.findFirst({ where: { manualId: manual.id, state: 'current' } });
  if (before)
    await tx.manualRevision.update({
      where: { id: before.id },
      data: { state: 'superseded', version: { increment: 1 } },
    });
  const id = newId();
  await tx.manualRevision.create({
    data: { id, manualId: manual.id, revision, issuedOn: toDbDate(issuedOn), state: 'current' },
  });
  await writeContent(context, id, { models, partIds });
  const subjects: readonly [Subject, ...Subject[]] = [
    { kind: 'manual', id: manual.id },
    { kind: 'manual-revision', id, after: 1 },
    ...(before ? [{ kind: 'manual-revision', id: before.id, before: before.version, after: before.version + 1 }] : []),
  ];
  return { id, superseded: before?.id ?? null, supersedes: before?.revision ?? null, subjects };
}
