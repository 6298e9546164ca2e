import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { askIn } from '../kits/public.ts';
import { shopSubjectId } from '../people/public.ts';
import { settingsInForce } from './settings-in-force.ts';

/** How the shop reminds from now on. Letters that were made stay as they are. */
export const changeReminderSettings = defineCommand(reminderOperations.changeReminderSettings, {
  locks: () => ['reminders'],
  async execute({ tx, input, actor, now, newId, entryId, expectedVersion }) {
    const before = await settingsInForce(askIn(tx));
    sameVersion(before.version, expectedVersion);
    const { reason, ...given } = input;
    const version = before.version + 1;
    const intervals = given.intervals.toSorted((a, b) => b - a);
    await tx.reminderSetting.create({
      data: { ...given, intervals, reason, id: newId(), version, personId: actor.personId, at: now, entryId },
    });
    return {
      reply: { version },
      subjects: [{ kind: 'shop', id: shopSubjectId }],
      facts: { isOn: given.isOn, before: { isOn: before.isOn, intervals: before.intervals }, intervals },
      reason,
    };
  },
});
