import { workingTimeOperations } from '@hubwright/contracts/people/working-time-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';
import { shopSubjectId } from './shop-subject.ts';

const shop = { kind: 'shop', id: shopSubjectId } as const;
const lock = 'shop-holidays';

export const addHoliday = defineCommand(workingTimeOperations.addHoliday, {
  locks: () => [lock],
  async execute({ tx, input, newId }) {
    const { part, name } = input;
    const on = toDbDate(input.on);
    const there = await tx.shopHoliday.findFirst({ where: { on, removedAt: null } });
    if (there)
      throw new Problem('holiday-there', `${input.on} is “${there.name}”`, {}, [
        { pointer: '/on', detail: 'This day is a holiday already' },
      ]);
    const id = newId();
    await tx.shopHoliday.create({ data: { id, on, part, name } });
    return { reply: { id, version: 1 }, subjects: [shop], facts: { holiday: id } };
  },
});

/** Taken away twice it stays away. */
export const removeHoliday = defineCommand(workingTimeOperations.removeHoliday, {
  locks: () => [lock],
  async execute({ tx, input, now }) {
    const { holidayId: id, reason } = input;
    const holiday = found(await tx.shopHoliday.findUnique({ where: { id } }), 'This holiday');
    if (holiday.removedAt === null) await tx.shopHoliday.update({ where: { id }, data: { removedAt: now } });
    const facts = { holiday: id, on: fromDbDate(holiday.on), name: holiday.name };
    return { reply: { id, version: 2 }, subjects: [shop], facts, reason };
  },
});
