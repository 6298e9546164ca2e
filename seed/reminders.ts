import { changeReminderSettings } from '../apps/server/src/modules/reminders/change-reminder-settings.command.ts';
import { setReminderChoice } from '../apps/server/src/modules/reminders/set-reminder-choice.command.ts';
import type { Calendar } from './calendar.ts';
import type { SeedRun } from './run.ts';

const settings = {
  ...{ isOn: true, intervals: [180, 90, 30], senderName: 'Wilmot Tarrow, front desk' },
  ...{ senderEmail: 'due@tansyhollow.example.com', replyTo: 'desk@tansyhollow.example.com' },
  subject: 'Units that are likely to fall due',
  opening:
    'We keep the due dates of the units we have worked on. For those named below the likely date is near, and we write so that you can plan.',
  closing:
    'Please tell us when it suits you, or what your aircraft has flown since: a newer reading makes the date better.',
  reason: 'Agreed with the front desk: half a year, a quarter and a month before',
};

/** Letters have been on for two months; the flying club asked for none. None was due yet: what was overhauled here runs for years. */
export function seedReminders(run: SeedRun, calendar: Calendar): void {
  calendar.on(-60, 16, () => run.run(changeReminderSettings, settings, { by: 'manager', version: 0 }));
  calendar.on(-20, 17, async () => {
    const { id: customerId } = await run.reads.customer.findUniqueOrThrow({ where: { code: 'OXLIP' } });
    const reason = 'Emrys Tolland by phone: the club keeps its own list';
    const input = { customerId, wantsLetters: false, saidOn: run.day(-20), reason };
    await run.run(setReminderChoice, input, { by: 'desk', version: 0 });
  });
}
