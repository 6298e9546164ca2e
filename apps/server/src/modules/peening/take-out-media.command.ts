import { mediaOperations } from '@hubwright/contracts/peening/media-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { mediaIn } from './media.ts';

/** Out of its machine for good; its checks and the lots peened with it keep naming it. */
export const takeOutMedia = defineCommand(mediaOperations.takeOutPeeningMedia, {
  locks: async ({ mediaId }, tx) => {
    const media = await tx.peeningMedia.findUnique({ where: { id: mediaId }, select: { machineId: true } });
    return [`peening-machine:${media?.machineId}`];
  },
  async execute({ tx, input, now, expectedVersion }) {
    const media = await mediaIn(tx, input.mediaId, expectedVersion);
    const version = media.version + 1;
    const ended = { takenOutAt: now, takenOutFor: input.reason, version };
    await tx.peeningMedia.update({ where: { id: media.id }, data: ended });
    return {
      reply: { id: media.id, version },
      subjects: [
        { kind: 'peening-media', id: media.id, before: media.version, after: version },
        { kind: 'peening-machine', id: media.machineId },
      ],
      facts: { code: media.code, machine: media.machine.code },
      reason: input.reason,
    };
  },
});
