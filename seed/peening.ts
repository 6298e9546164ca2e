import { addMachine } from '../apps/server/src/modules/peening/add-machine.command.ts';
import { addMedia } from '../apps/server/src/modules/peening/add-media.command.ts';
import { checkMedia } from '../apps/server/src/modules/peening/check-media.command.ts';
import { qualifySetup } from '../apps/server/src/modules/peening/qualify-setup.command.ts';
import { takeOutMedia } from '../apps/server/src/modules/peening/take-out-media.command.ts';
import type { Calendar } from './calendar.ts';
import { bladeProgram, goodCheck, olderShot, peeningMachine, shot } from './data/peening.ts';
import { presigned, type SeedRun } from './run.ts';

/** In days from today: the older shot came out, and the program was qualified anew with the new. */
const newShot = -160;
/** Two days before the thirty that a check holds. */
const checkEvery = 28;

/** The cabinet with its shot, and the program it was qualified for, when the records began and again with new shot. */
export async function seedPeening(run: SeedRun, calendar: Calendar, beginning: number): Promise<void> {
  const { id: machineId } = await run.run(addMachine, peeningMachine, { by: 'inspector' });
  let mediaId = (await run.run(addMedia, { ...olderShot, machineId }, { by: 'maren' })).id;
  await check(run, mediaId, 0);
  await qualify(run, machineId);
  for (let day = newShot - checkEvery, wear = 8; day > beginning; day -= checkEvery, wear -= 1)
    calendar.on(day, 13.3, () => check(run, mediaId, Math.max(1, wear)));
  calendar.on(newShot, 13.3, async () => {
    const worn = { mediaId, reason: 'Worn: replaced by new shot' };
    await run.run(takeOutMedia, worn, { by: 'maren', version: await versionOf(run, mediaId) });
    mediaId = (await run.run(addMedia, { ...shot, machineId }, { by: 'maren' })).id;
    await check(run, mediaId, 0);
    await qualify(run, machineId);
  });
  for (let day = newShot + checkEvery, wear = 1; day < 0; day += checkEvery, wear += 1)
    calendar.on(day, 13.3, () => check(run, mediaId, wear));
}

async function check(run: SeedRun, mediaId: string, wear: number): Promise<void> {
  const input = { mediaId, ...goodCheck(wear), signature: presigned };
  await run.run(checkMedia, input, { by: 'maren', version: await versionOf(run, mediaId) });
}

async function versionOf(run: SeedRun, mediaId: string): Promise<number> {
  return (await run.reads.peeningMedia.findUniqueOrThrow({ where: { id: mediaId } })).version;
}

async function qualify(run: SeedRun, machineId: string): Promise<void> {
  const { version } = await run.reads.peeningMachine.findUniqueOrThrow({ where: { id: machineId } });
  await run.run(qualifySetup, { ...bladeProgram, machineId, signature: presigned }, { by: 'inspector', version });
}
