import { mediaOperations } from '@hubwright/contracts/peening/media-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';

/** A media lot begins its record in the machine it goes into. One that came out begins another. */
export const addMedia = defineCommand(mediaOperations.addPeeningMedia, {
  locks: ({ machineId, code }) => [`peening-machine:${machineId}`, `peening-media-code:${code}`],
  async execute({ tx, input, actor, now, newId }) {
    const machine = found(await tx.peeningMachine.findUnique({ where: { id: input.machineId } }), 'This machine');
    if (await tx.peeningMedia.findUnique({ where: { code: input.code } }))
      throw new Problem('invalid-input', `${input.code} is on record already`, {}, [
        { pointer: '/code', detail: 'Another media lot has this code' },
      ]);
    const inIt = await tx.peeningMedia.findFirst({ where: { machineId: machine.id, takenOutAt: null } });
    if (inIt) throw new Problem('media-in', `${inIt.code} is in ${machine.code}`, { media: inIt.code });
    const id = newId();
    const { everyHours = null, ...given } = input;
    await tx.peeningMedia.create({ data: { id, ...given, everyHours, putInBy: actor.personId, putInAt: now } });
    return {
      reply: { id, version: 1 },
      subjects: [
        { kind: 'peening-media', id, after: 1 },
        { kind: 'peening-machine', id: machine.id },
      ],
      facts: { ...given, everyHours, machine: machine.code },
    };
  },
});
