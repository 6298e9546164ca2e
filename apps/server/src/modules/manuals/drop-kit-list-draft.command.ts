import { kitListOperations } from '@hubwright/contracts/manuals/kit-list-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';

/** A waiting kit list is put aside; the table that brought it stays on record. */
export const dropKitListDraft = defineCommand(kitListOperations.dropKitListDraft, {
  locks: () => ['imports'],
  async execute({ tx, input, expectedVersion }) {
    const draft = found(await tx.kitListDraft.findUnique({ where: { id: input.draftId } }), 'This kit list');
    sameVersion(draft.version, expectedVersion);
    if (draft.state !== 'waiting') throw new Problem('draft-gone', `This kit list was ${draft.state} already`);
    const { id, version } = await tx.kitListDraft.update({
      where: { id: draft.id },
      data: { state: 'dropped', version: { increment: 1 } },
    });
    return {
      reply: { id, version },
      subjects: [{ kind: 'kit-list-draft', id, before: draft.version, after: version }],
    };
  },
});
