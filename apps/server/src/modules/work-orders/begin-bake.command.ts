import type { Process } from '@hubwright/contracts/people/operations';
import { Problem } from '@hubwright/contracts/problems';
import { bakeOperations } from '@hubwright/contracts/work-orders/bake-operations';
import { lateBy } from '@hubwright/rules/bake';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { requireAuthorisation } from '../people/public.ts';
import { equipmentLocks, requireEquipment } from '../processes/public.ts';
import { bakeClockAt } from './bake-clock.ts';
import { type BakeNamed, bakeLocks, bakeSubjects, bakesNamed } from './bakes-named.ts';
import { performedOn, requireTurn } from './step-signing.ts';

const operation = bakeOperations.beginBake;
type Asking = Context<typeof operation>;

/** An entry this old, in minutes, is no slip of the finger but written down afterwards: common practice, no source. */
const justNow = 5;

/**
 * A bake went into the oven: its deadline stops and its hold runs. Begun late is what happened, and is put down as late. It is no
 * signature; that comes with the chart, which must begin when this says.
 */
export const beginBake = defineCommand(operation, {
  locks: async (input, tx) => [...(await bakeLocks(tx, input)), ...equipmentLocks(input.equipmentId)],
  async execute(context) {
    const { tx, input, actor, now, today } = context;
    const at = instantOf(context);
    const named = await bakesNamed(tx, input);
    const { first } = named;
    const process = first.step.process as Process;
    const authorisation = await requireAuthorisation(tx, actor, { process, level: 'perform', today });
    // First of all, since nothing before the plating is a time the bake could have begun.
    const plated: number[] = [];
    for (const bake of named.bakes) plated.push(await platedBefore(context, bake, at));
    const oven: Oven = named.load
      ? { oven: named.load.equipment, equipmentId: named.load.equipmentId, loadId: named.load.id }
      : await ovenOf(context, first, at);
    const begun: Begun[] = [];
    for (const [index, bake] of named.bakes.entries())
      begun.push(await beginOne(context, bake, { at, oven, platedAt: plated[index] ?? 0 }));
    return {
      reply: { begunAt: at.toISOString(), bakes: begun },
      subjects: bakeSubjects(named),
      authorisation: { ...authorisation },
      facts: { begunAt: at.toISOString(), enteredAt: now.toISOString(), oven: oven.oven, bakes: begun },
      ...(input.lateReason ? { reason: input.lateReason } : {}),
    };
  },
});

interface Oven {
  readonly oven: string;
  readonly equipmentId: string | null;
  readonly loadId: string | null;
}
type Begun = { id: string; stepId: string; lateByMinutes: number };

/** Throws `performed-in-future`, and `late-reason-missing` for what was written down afterwards without saying why. */
function instantOf({ input, now }: Asking): Date {
  if (input.begunAt === undefined) return now;
  const at = new Date(input.begunAt);
  if (at > now)
    throw new Problem('performed-in-future', 'The bake is dated in the future', {}, [
      { pointer: '/begunAt', detail: 'This lies in the future' },
    ]);
  if (now.getTime() - at.getTime() > justNow * 60_000 && !input.lateReason)
    throw new Problem('late-reason-missing', 'It went in earlier: say why it is entered now', {}, [
      { pointer: '/lateReason', detail: 'Say why it is entered only now' },
    ]);
  return at;
}

/** The oven a step alone is baked in: on record where it asks for one of a kind, else as it is called. */
async function ovenOf(context: Asking, { step }: BakeNamed, at: Date): Promise<Oven> {
  const { tx, input } = context;
  const day = await performedOn(context, step.traveler.workOrder.receivedOn, input.begunAt);
  const asked = { kind: step.equipmentKind, equipmentId: input.equipmentId };
  const used = await requireEquipment(tx, asked, { at, day });
  const oven = used ? `${used.code} ${used.title}` : (input.oven ?? '');
  return { oven, equipmentId: used?.id ?? null, loadId: null };
}

/** When the plating it relieves ended. Throws why it could not be put in at that instant. */
async function platedBefore({ tx }: Asking, { step }: BakeNamed, at: Date): Promise<number> {
  const { traveler, title } = step;
  await requireTurn(tx, step, at);
  const clock = await bakeClockAt(tx, step.id);
  if (!clock)
    throw new Problem('plating-unsigned', `${traveler.number}: nothing is signed as plated before “${title}”`);
  if (clock.begun)
    throw new Problem('bake-begun', `${traveler.number} is in the oven since ${clock.begun.at}`, {
      traveler: traveler.number,
    });
  const platedAt = Date.parse(clock.platedAt);
  if (at.getTime() < platedAt)
    throw new Problem('performed-at-wrong', `${traveler.number}: the plating ended at ${clock.platedAt}`, {}, [
      { pointer: '/begunAt', detail: 'This lies before the end of the plating' },
    ]);
  return platedAt;
}

async function beginOne(
  { tx, actor, now, newId, input }: Asking,
  { step, spec }: BakeNamed,
  { at, oven, platedAt }: { at: Date; oven: Oven; platedAt: number },
): Promise<Begun> {
  const id = newId();
  await tx.ovenBake.create({
    data: {
      ...{ id, stepId: step.id, ...oven, begunAt: at, begunBy: actor.personId, enteredAt: now },
      lateReason: input.lateReason ?? null,
    },
  });
  const late = lateBy({ platedAt, startedAt: at.getTime(), spec });
  return { id, stepId: step.id, lateByMinutes: Number(late.toFixed(1)) };
}
