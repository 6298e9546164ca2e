import { Problem } from '@hubwright/contracts/problems';
import { loadOperations } from '@hubwright/contracts/work-orders/load-operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { nextNumber } from '../../platform/database/counters.ts';
import { requireAuthorisation } from '../people/public.ts';
import { equipmentLocks, requireEquipment } from '../processes/public.ts';
import { workOrderLocks } from './loads.ts';
import { refuseInLoad, requireTurn, type SignedStep, stepToSign } from './step-signing.ts';

const operation = loadOperations.startLoad;

/** Parts go into one tank, oven or cabinet: each of them ready for this step, none of them in another load. */
export const startLoad = defineCommand(operation, {
  locks: async (input, tx) => [...equipmentLocks(input.equipmentId), ...(await workOrderLocks(tx, input.stepIds))],
  async execute(context) {
    const { tx, input, now, actor, newId, today } = context;
    const steps = await loadable(context, [...new Set(input.stepIds)]);
    const authorisation = await requireAuthorisation(tx, actor, { process: input.process, level: 'perform', today });
    await refuseInLoad(tx, steps);
    const { process } = input;
    const tank = await tankOf(context, steps);
    const { equipment } = tank;
    const load = { id: newId(), number: await nextNumber(tx, 'LD', 4), process, ...tank };
    await tx.load.create({ data: { ...load, startedBy: actor.personId, startedAt: now } });
    await tx.loadPart.createMany({ data: steps.map((step) => ({ id: newId(), loadId: load.id, stepId: step.id })) });
    return {
      reply: { id: load.id, version: 1, number: load.number },
      subjects: [
        { kind: 'load', id: load.id, after: 1 },
        ...steps.map(({ travelerId }) => ({ kind: 'traveler', id: travelerId })),
      ],
      authorisation: { ...authorisation },
      facts: { number: load.number, process, equipment, travelers: steps.map(({ traveler }) => traveler.number) },
    };
  },
});

async function loadable(context: Context<typeof operation>, stepIds: readonly string[]): Promise<SignedStep[]> {
  const { tx, input, now } = context;
  const steps: SignedStep[] = [];
  for (const id of stepIds) {
    const step = await stepToSign(tx, id);
    const { number } = step.traveler;
    if (!step.batched) throw new Problem('not-batched', `${number}: “${step.title}” is not done in a load`);
    if (step.process !== input.process)
      throw new Problem('load-mixed', `${number}: “${step.title}” is ${step.process}, the load is ${input.process}`);
    await requireTurn(tx, step, now);
    steps.push(step);
  }
  refuseOtherSheets(steps);
  return steps;
}

/** One oven run has one specification. */
function refuseOtherSheets([first, ...more]: readonly SignedStep[]): void {
  const other = more.find(({ sheet }) => JSON.stringify(sheet) !== JSON.stringify(first?.sheet));
  if (other)
    throw new Problem(
      'load-mixed',
      `${other.traveler.number}: “${other.title}” asks for another bake than the first part`,
    );
}

/** The tank its parts ask for, fit now; free words where they ask for none. Throws `load-mixed` where they ask for different ones. */
async function tankOf({ tx, input, now, today }: Context<typeof operation>, steps: readonly SignedStep[]) {
  const [kind = null, other] = [...new Set(steps.map(({ equipmentKind }) => equipmentKind))];
  if (other !== undefined)
    throw new Problem('load-mixed', `Some are done in ${kind ?? 'no tank on record'}, others in ${other ?? 'none'}`);
  const { equipmentId } = input;
  const used = await requireEquipment(tx, { kind, equipmentId }, { at: now, day: today });
  if (used) return { equipment: `${used.code} ${used.title}`, equipmentId: used.id };
  if (input.equipment !== undefined) return { equipment: input.equipment, equipmentId: null };
  throw new Problem('equipment-missing', 'The load names no tank, oven or cabinet', {}, [
    { pointer: '/equipment', detail: 'Name the tank, oven or cabinet' },
  ]);
}
