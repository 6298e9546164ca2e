import type { BladeRules, MeasureSpec } from '@hubwright/contracts/manuals/measures';
import { Problem } from '@hubwright/contracts/problems';
import { dimensionOperations } from '@hubwright/contracts/work-orders/dimension-operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { bladeRulesOf } from '../manuals/public.ts';
import { carriedBy, openInstallations, writeCarried } from '../units/public.ts';
import { routesByClass } from './raise-travelers.ts';
import { relimit } from './relimit.ts';

type Recording = Context<typeof dimensionOperations.recordCarried>;
type WorkOrder = Awaited<ReturnType<typeof workOrderAtWork>>;

/** What a part carries from visit to visit is added to its record; limits of open steps follow it at once. */
export const recordCarried = defineCommand(dimensionOperations.recordCarried, {
  locks: ({ workOrderId }) => [`work-order:${workOrderId}`],
  async execute(context) {
    const { tx, input } = context;
    const workOrder = await workOrderAtWork(context);
    const value = await checked[input.kind](context, workOrder);
    const { itemId, kind, place, basis, workOrderId } = input;
    const id = await writeCarried(context, { itemId, kind, place, value, basis, workOrderId });
    const { travelers, steps } =
      kind === 'matched-set' ? { travelers: [], steps: 0 } : await relimit(context, workOrder.id);
    const { version } = await tx.workOrder.update({
      where: { id: workOrder.id },
      data: { version: { increment: 1 } },
      select: { version: true },
    });
    return {
      reply: { id, version, steps },
      subjects: [
        { kind: 'work-order', id: workOrder.id, before: workOrder.version, after: version },
        { kind: 'unit', id: itemId },
        ...travelers.map((one) => ({
          kind: 'traveler',
          id: one.travelerId,
          before: one.before,
          after: one.before + 1,
        })),
      ],
      facts: { kind, place, value, basis, steps },
    };
  },
});

/** Throws `wrong-state` or `not-of-this-unit`. */
async function workOrderAtWork({ tx, input }: Recording) {
  const workOrder = found(await tx.workOrder.findUnique({ where: { id: input.workOrderId } }), 'This work order');
  if (!['teardown', 'inspected', 'in-work', 'build', 'final-inspection'].includes(workOrder.stage))
    throw new Problem('wrong-state', `${workOrder.number} is not under work`, { stage: workOrder.stage });
  const parts = await openInstallations(tx, workOrder.unitId);
  const isUnit = input.itemId === workOrder.unitId;
  const part = parts.find(({ itemId }) => itemId === input.itemId);
  if ((!isUnit && !part) || (input.kind === 'diameter' && !isUnit))
    throw new Problem('not-of-this-unit', 'Choose the unit or a part in it', {}, [
      { pointer: '/itemId', detail: 'This is not the part it is kept for' },
    ]);
  return { ...workOrder, partClass: part?.item.kind ?? 'assembly', rules: await bladeRulesOf(tx, workOrder) };
}

/** Each kind, checked against the revision and what is on record; answers the value as the revision writes it. */
const checked: Record<Recording['input']['kind'], (context: Recording, workOrder: WorkOrder) => Promise<string>> = {
  diameter: async ({ input }, { rules }) => {
    const named = rules.diameters.find(({ diameter }) => Number(diameter) === Number(input.value));
    if (named) return named.diameter;
    const names = rules.diameters.map(({ diameter }) => diameter).join(', ') || 'none';
    throw new Problem('diameter-not-allowed', `Diameters the manual names: ${names}`);
  },
  oversize: async (context, workOrder) => {
    const { tx, input } = context;
    const route = (await routesByClass(context, workOrder)).get(workOrder.partClass);
    const measure = route?.steps.flatMap(({ measures }) => measures).find(({ name }) => name === input.place);
    const steps = ((measure?.oversizes ?? []) as MeasureSpec['oversizes']).map(({ step }) => step);
    const now = (await carriedBy(tx, [input.itemId]))
      .get(input.itemId)
      ?.find(({ kind, place }) => kind === 'oversize' && place === input.place)?.value;
    if (steps.includes(input.value) && steps.indexOf(input.value) >= steps.indexOf(now ?? '')) return input.value;
    const from = now ? `; it has ${now} already` : '';
    throw new Problem('oversize-unknown', `${input.place}: steps are ${steps.join(', ') || 'none'}${from}`);
  },
  'matched-set': async (context, workOrder) => {
    refuseMixedSet(context.input, workOrder.rules, await setsOf(context, workOrder));
    return context.input.value.toUpperCase();
  },
};

async function setsOf({ tx }: Recording, { unitId }: WorkOrder) {
  const facts = (await carriedBy(tx, [unitId])).get(unitId) ?? [];
  return facts.filter(({ kind }) => kind === 'matched-set');
}

/** Throws `set-unknown` or `set-mixed`: one set is at one place, and what is put back is what came from there, unless it is new. */
function refuseMixedSet(
  input: Recording['input'],
  { matchedSets }: BladeRules,
  sets: Awaited<ReturnType<typeof setsOf>>,
): void {
  const mark = input.value.toUpperCase();
  if (!matchedSets.some(({ position }) => position === input.place))
    throw new Problem(
      'set-unknown',
      `Kept together: ${matchedSets.map(({ position }) => position).join(', ') || 'nothing'}`,
    );
  const elsewhere = sets.find(({ place, value }) => place !== input.place && value === mark);
  if (elsewhere) throw new Problem('set-mixed', `Set ${mark} belongs to ${elsewhere.place}`);
  const here = sets.find(({ place }) => place === input.place);
  if (input.basis === 'kept' && here?.value !== mark)
    throw new Problem(
      'set-mixed',
      here ? `${input.place} had set ${here.value}` : `No set is on record for ${input.place}`,
    );
  if (input.basis === 'new' && here?.value === mark)
    throw new Problem('set-mixed', `Set ${mark} is the one that came; say that it is kept`);
}
