import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { placesOf, planesOf } from '@hubwright/contracts/field-balance/planes';
import type { FieldBalanceData } from '@hubwright/contracts/field-balance/shapes';
import { type Pointed, Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { requireAuthorisation } from '../people/public.ts';

/** Places and limits of a model; what was entered before stays for the orders that were set up with it. */
export const enterData = defineCommand(fieldBalanceOperations.enterFieldBalanceData, {
  locks: ({ modelId }) => [`model:${modelId}`],
  async execute({ tx, input, actor, now, today, entryId, newId }) {
    const { modelId, signature: _, ...data } = input;
    const model = found(await tx.unitModel.findUnique({ where: { id: modelId } }), 'This model');
    const need = { process: 'dynamic-balance', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    refuseMuddled(data);
    const id = newId();
    const entered = { enteredBy: actor.personId, enteredAt: now, entryId };
    await tx.fieldBalanceSpec.create({ data: { id, modelId, source: data.source, data, ...entered } });
    return {
      reply: { id, version: 1 },
      subjects: [{ kind: 'model', id: modelId }],
      authorisation: { ...authorisation },
      facts: { model: model.designation, ...data },
    };
  },
});

/** Throws `places-wrong` with every place, plane and range that does not fit. */
function refuseMuddled(data: FieldBalanceData): void {
  const { ranges, secondPlane, planeName } = data;
  const places = placesOf(planesOf(data));
  const wrong: Pointed[] = places.flatMap(({ name, angle, plane }, at) => {
    const pointer = plane === 0 ? `/places/${at}/name` : `/secondPlane/places/${at - data.places.length}/name`;
    const isTwice = places
      .slice(0, at)
      .some((one) => one.name === name || (one.plane === plane && Number(one.angle) === Number(angle)));
    return isTwice ? [{ pointer, detail: `${name} at ${angle}° is named before, by name or by angle` }] : [];
  });
  if (secondPlane && planeName === undefined)
    wrong.push({ pointer: '/planeName', detail: 'Of two planes each has a name' });
  if (secondPlane && secondPlane.planeName === planeName)
    wrong.push({ pointer: '/secondPlane/planeName', detail: 'The first plane has this name' });
  wrong.push(...muddledRanges(ranges));
  const [first] = wrong;
  if (first) throw new Problem('places-wrong', first.detail, {}, wrong);
}

function muddledRanges(ranges: FieldBalanceData['ranges']): Pointed[] {
  const wrong: Pointed[] = [];
  for (const [at, { fromRpm, toRpm, limit, target }] of ranges.entries()) {
    if (fromRpm >= toRpm) wrong.push({ pointer: `/ranges/${at}/toRpm`, detail: 'It ends before it starts' });
    if (ranges.slice(0, at).some((one) => fromRpm <= one.toRpm && toRpm >= one.fromRpm))
      wrong.push({ pointer: `/ranges/${at}/fromRpm`, detail: 'It lies over another range' });
    if (Number(target) > Number(limit))
      wrong.push({ pointer: `/ranges/${at}/target`, detail: 'It is above the limit' });
  }
  return wrong;
}
