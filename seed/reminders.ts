import { addDays, addMonths } from '@hubwright/rules/dates';
import { applyFleetTable } from '../apps/server/src/modules/fleet-tables/apply-fleet-table.command.ts';
import { stageFleetTable } from '../apps/server/src/modules/fleet-tables/stage-fleet-table.command.ts';
import { changeReminderSettings } from '../apps/server/src/modules/reminders/change-reminder-settings.command.ts';
import { markLetterPosted } from '../apps/server/src/modules/reminders/mark-letter-posted.command.ts';
import { sendReminders } from '../apps/server/src/modules/reminders/send-reminders.command.ts';
import { setReminderChoice } from '../apps/server/src/modules/reminders/set-reminder-choice.command.ts';
import { sayUse } from '../apps/server/src/modules/units/say-use.command.ts';
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

/** The calendar limit of the two-blade propeller, in months. */
const limit = 72;
/** What flies with a maintenance base that keeps its list with us: days from today until the months of each propeller run out. */
const fleet = [
  { registration: 'ZZ-CBA', serial: 'Q2-1187', dueIn: 25 },
  { registration: 'ZZ-CBB', serial: 'Q2-1204', dueIn: 140 },
  { registration: 'ZZ-CBC', serial: 'Q2-1391', dueIn: 420 },
] as const;
const columns = [
  ...['registration', 'airframe', 'engine', 'model', 'serial', 'installedOn', 'meter', 'meterThen', 'sinceOverhaul'],
  ...['overhauledOn', 'reading', 'readOn'],
];

/**
 * Letters have been on for two months, and the flying club asked for none. A maintenance base brought in its fleet; the first letter told of two
 * of its propellers and was posted, and one of them has come to the next interval since.
 */
export function seedReminders(run: SeedRun, calendar: Calendar): void {
  calendar.on(-60, 16, () => run.run(changeReminderSettings, settings, { by: 'manager', version: 0 }));
  calendar.on(-40, 15, () => bringInFleet(run));
  calendar.on(-30, 15, () => postLetter(run));
  calendar.on(-20, 17, async () => {
    const customerId = await idOf(run, 'OXLIP');
    const reason = 'Emrys Tolland by phone: the club keeps its own list';
    const input = { customerId, wantsLetters: false, saidOn: run.day(-20), reason };
    await run.run(setReminderChoice, input, { by: 'desk', version: 0 });
  });
}

async function idOf(run: SeedRun, code: string): Promise<string> {
  return (await run.reads.customer.findUniqueOrThrow({ where: { code } })).id;
}

async function bringInFleet(run: SeedRun): Promise<void> {
  const rows = fleet.map(({ registration, serial, dueIn }, index): [number, ...string[]] => {
    const overhauledOn = addMonths(run.day(dueIn), -limit);
    return [
      ...([index + 2, registration, 'Heronby Pinnace', 'Brindle B-360', 'Q2C-72', serial] as const),
      ...[addDays(overhauledOn, 14), 'tachometer', '1204.0', '0.0', overhauledOn],
      ...[String(1_980 + index * 40), run.day(-41)],
    ];
  });
  const staged = { customerId: await idOf(run, 'COLDBECK'), kind: 'fleet' as const, sha256: 'coldbeck-fleet' };
  const { id } = await run.run(stageFleetTable({ header: columns, rows }), staged, { by: 'desk' });
  const mapping = Object.fromEntries(columns.map((field, index) => [field, index]));
  await run.run(applyFleetTable, { importId: id, mapping }, { by: 'desk' });
  // Until somebody says how they are used the shorter limit of acrobatic flying would count.
  const units = await run.reads.serializedItem.findMany({
    where: { serial: { in: fleet.map(({ serial }) => serial) } },
  });
  for (const { id: itemId } of units)
    await run.run(sayUse, { itemId, use: 'normal', basis: 'the base’s list' }, { by: 'desk' });
}

/** On paper: the demonstration sends no mail. */
async function postLetter(run: SeedRun): Promise<void> {
  await run.dueDates();
  const units = await Promise.all(
    [['Q2-1187', 90] as const, ['Q2-1204', 180] as const].map(async ([serial, intervalDays]) => {
      const unit = await run.reads.serializedItem.findFirstOrThrow({ where: { serial } });
      return { unitId: unit.id, intervalDays };
    }),
  );
  const letter = { customerId: await idOf(run, 'COLDBECK'), way: 'paper' as const, units };
  const { letters } = await run.run(
    sendReminders('The demonstration sends no mail.'),
    { letters: [letter] },
    { by: 'desk' },
  );
  const posted = { letterId: letters[0]?.id ?? '', postedOn: run.day(-30) };
  await run.run(markLetterPosted, posted, { by: 'desk', version: 1 });
}
