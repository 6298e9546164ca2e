import { addEquipment } from '../apps/server/src/modules/processes/add-equipment.command.ts';
import { answerDoubt } from '../apps/server/src/modules/processes/answer-doubt.command.ts';
import { recordAddition } from '../apps/server/src/modules/processes/record-addition.command.ts';
import { recordReadings } from '../apps/server/src/modules/processes/record-readings.command.ts';
import type { Calendar } from './calendar.ts';
import { equipment, weeklyResults } from './data/equipment.ts';
import { fitEquipment } from './fit-equipment.ts';
import { presigned, type SeedRun } from './run.ts';

/** Who looks after what. */
const keepers: Readonly<Record<string, string>> = { 'non-destructive-test': 'ludo' };
const keeperOf = (process: string) => keepers[process] ?? 'maren';

/** Tanks and test systems, and the analyses of the last ten weeks in the calendar. */
export async function seedEquipment(run: SeedRun, calendar: Calendar): Promise<void> {
  for (const one of equipment) {
    const { id: equipmentId } = await run.run(addEquipment, one, { by: 'inspector' });
    const results = weeklyResults[one.code] ?? [];
    const by = keeperOf(one.process);
    for (let week = 0; week < (results[0]?.[1].length ?? 0); week += 1) {
      const values = results.map(([name, of]) => ({ name, value: of[week] ?? '' }));
      const day = -7 * (results[0]?.[1].length ?? 0) + 7 * week;
      calendar.on(day, 14.2, () => analyse(run, calendar, { day, equipmentId, values, by }));
    }
  }
}

type Analysis = { day: number; equipmentId: string; values: { name: string; value: string }[]; by: string };

/** What is out of its limits is put right the same day, read again, and an inspector answers for what went through before. */
async function analyse(run: SeedRun, calendar: Calendar, { day, equipmentId, values, by }: Analysis): Promise<void> {
  const { good } = await run.run(recordReadings, { equipmentId, values, signature: presigned }, { by });
  if (good) return;
  calendar.on(day, 15, () =>
    run.run(recordAddition, { equipmentId, what: 'cadmium oxide', amount: '4.5', unit: 'lb' }, { by }),
  );
  const again = [{ name: 'cadmium metal', value: '3.12' }];
  calendar.on(day, 16.5, () => run.run(recordReadings, { equipmentId, values: again, signature: presigned }, { by }));
  calendar.on(day, 17, () => answerAll(run, equipmentId));
}

async function answerAll(run: SeedRun, equipmentId: string): Promise<void> {
  const doubts = await run.reads.equipmentDoubt.findMany({ where: { equipmentId, decision: null }, take: 100 });
  for (const { id, version } of doubts) {
    const reason = 'Thickness and adhesion measured on the part: good';
    const answer = { doubtId: id, decision: 'stands' as const, reason, signature: presigned };
    await run.run(answerDoubt, answer, { by: 'inspector', version });
  }
}

/** Something of a kind fit for work now, checked before the first part of the day by whoever looks after it. */
export function fitNow(run: SeedRun, kind: string): Promise<string> {
  return fitEquipment(run.reads, { kind, at: new Date(run.now()) }, (readings, process) =>
    run.run(recordReadings, { ...readings, signature: presigned }, { by: keeperOf(process) }),
  );
}

/** The penetrant line was checked first thing today; the magnetic bench waits for its check. Nothing lies after a real now. */
export async function checksOfToday(run: SeedRun): Promise<void> {
  run.midnight();
  await fitNow(run, 'penetrant-line');
}
