import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { refuseStopped, theKit } from './kit.ts';
import { makeKit } from './make-kit.ts';

/** Usually made at receiving; by hand for what was received before its manual data was complete, or when the serial was read. */
export const explodeKit = defineCommand(kitsOperations.explodeKit, {
  locks: (input) => [`work-order:${input.workOrderId}`],
  async execute(context) {
    const { tx, input, today } = context;
    if (input.needBy < today)
      throw new Problem('invalid-input', 'A kit cannot be needed before today', {}, [
        { pointer: '/needBy', detail: 'This day has passed' },
      ]);
    const made = await makeKit(context, input);
    if (!made) throw new Problem('kit-list-empty', 'The manual revision lists nothing for this unit and scope');
    refuseStopped(await theKit(tx, made.id));
    const { id, version, code, lines, undecided } = made;
    return {
      reply: { id, version, code, lines },
      subjects: [
        { kind: 'kit', id, after: version },
        { kind: 'work-order', id: input.workOrderId },
      ],
      facts: { code, lines, undecided },
    };
  },
});
