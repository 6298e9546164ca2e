import { moveFrozenLot } from '../apps/server/src/modules/inventory/move-frozen-lot.command.ts';
import type { Calendar } from './calendar.ts';
import type { SeedRun } from './run.ts';

/** The old roll of prepreg comes out for a day every other week, and lies out again since yesterday; the film was out once. */
export function seedFreezer(run: SeedRun, calendar: Calendar): void {
  for (const day of [-130, -116, -102, -88, -74, -60, -46, -32]) {
    calendar.on(day, 14, () => move(run, 'LM-PR7', 'out'));
    calendar.on(day + 1, 16, () => move(run, 'LM-PR7', 'in'));
  }
  calendar.on(-40, 14, () => move(run, 'LM-FA3', 'out'));
  calendar.on(-40, 22, () => move(run, 'LM-FA3', 'in'));
  calendar.on(-1, 20.5, () => move(run, 'LM-PR7', 'out'));
}

async function move(run: SeedRun, number: string, to: 'out' | 'in'): Promise<void> {
  const lot = await run.reads.lot.findFirstOrThrow({ where: { part: { number } }, orderBy: { receivedAt: 'asc' } });
  await run.run(moveFrozenLot, { lotId: lot.id, to }, { by: 'parts', version: lot.version });
}
