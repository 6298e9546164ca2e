import { fileOperations } from '@hubwright/contracts/files/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';

/** A photo that should not count is struck by a newer entry; its bytes and its entry stay. */
export const strikePhoto = defineCommand(fileOperations.strikePhoto, {
  locks: (input) => [`photo:${input.photoId}`],
  async execute({ tx, input, actor, now, entryId, newId }) {
    const photo = found(
      await tx.photo.findUnique({ where: { id: input.photoId }, include: { struck: true } }),
      'This photo',
    );
    if (photo.addedBy !== actor.personId && !actor.roles.includes('inspector'))
      throw new Problem('not-permitted', 'Only who added a photo, or an inspector, may strike it', {
        roles: ['inspector'],
      });
    if (photo.struck) throw new Problem('photo-struck', `It was struck before: ${photo.struck.reason}`);
    const { reason } = input;
    await tx.struckPhoto.create({
      data: { id: newId(), photoId: photo.id, reason, struckBy: actor.personId, struckAt: now, entryId },
    });
    const { id, subjectKind, subjectId, workOrderId, fileHash, title } = photo;
    const beside =
      subjectKind === 'finding' || subjectKind === 'traveler' ? [{ kind: subjectKind, id: subjectId }] : [];
    return {
      reply: { id, version: 2 },
      subjects: [{ kind: 'photo', id, before: 1, after: 2 }, ...beside, { kind: 'work-order', id: workOrderId }],
      facts: { fileHash, title },
      reason,
    };
  },
});
