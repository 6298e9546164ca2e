import { enterAbsence } from '../apps/server/src/modules/people/absences.command.ts';
import { assignShifts } from '../apps/server/src/modules/people/assign-shifts.command.ts';
import { logTraining } from '../apps/server/src/modules/people/log-training.command.ts';
import { addShiftPattern } from '../apps/server/src/modules/people/shift-patterns.command.ts';
import { addHoliday } from '../apps/server/src/modules/people/shop-holidays.command.ts';
import { addTrainingItem } from '../apps/server/src/modules/people/training-items.command.ts';
import type { Calendar } from './calendar.ts';
import { administrator } from './data/people.ts';
import { absences, induction, shifts, trainings } from './data/working-time.ts';
import type { SeedRun } from './run.ts';

const by = 'manager';

/** Training, shifts, a holiday and absences of the invented people. */
export async function seedWorkingTime(run: SeedRun, calendar: Calendar, beginning: number): Promise<void> {
  for (const { title, everyMonths, processes, taken, ...training } of trainings) {
    const item = { title, everyMonths, processes: [...processes] };
    const { id: itemId } = await run.run(addTrainingItem, item, { by: administrator.signInName });
    for (const [person, ago] of Object.entries(taken)) {
      await train(run, person, { ...training, itemId, kind: 'initial', heldOn: run.day(beginning) });
      const again = { ...training, itemId, kind: 'recurrent' as const, heldOn: run.day(-ago) };
      calendar.on(-ago, 14, () => train(run, person, again));
    }
  }
  const { person, ago, ...taught } = induction;
  calendar.on(-ago, 14, () => train(run, person, { ...taught, kind: 'initial', heldOn: run.day(-ago) }));
  await seedShifts(run, beginning);
  calendar.on(-2, 21, () => seedAbsences(run));
}

type Taken = Parameters<typeof entryOf>[1];

async function train(run: SeedRun, person: string, taken: Taken): Promise<void> {
  await run.run(logTraining(run.files), entryOf(await run.personId(person), taken), { by });
}

function entryOf(
  personId: string,
  taken: {
    itemId?: string;
    title?: string;
    kind: 'initial' | 'recurrent';
    heldOn: string;
    minutes: number;
    givenBy: string;
  },
) {
  return { personId, ...taken, result: 'passed' as const };
}

async function seedShifts(run: SeedRun, beginning: number): Promise<void> {
  const validFrom = run.day(beginning);
  for (const [index, { name, week, people }] of shifts.entries()) {
    const { id: patternId } = await run.run(addShiftPattern, { name, week }, { by });
    if (index === 0) await run.run(assignShifts, { patternId, validFrom }, { by });
    for (const person of people)
      await run.run(assignShifts, { patternId, validFrom, personId: await run.personId(person) }, { by });
  }
}

async function seedAbsences(run: SeedRun): Promise<void> {
  for (const { person, kind, note, ...days } of absences) {
    const span = { from: run.day(days.from), to: run.day(days.to) };
    await run.run(enterAbsence, { personId: await run.personId(person), kind, note, ...span }, { by });
  }
  await run.run(addHoliday, { on: weekdayAfter(run, 9), part: 'whole', name: 'Founders’ day' }, { by });
}

/** The first day from Monday to Friday at or after an offset from today. */
function weekdayAfter(run: SeedRun, offset: number): string {
  const day = run.day(offset);
  return [0, 6].includes(new Date(`${day}T00:00:00Z`).getUTCDay()) ? weekdayAfter(run, offset + 1) : day;
}
