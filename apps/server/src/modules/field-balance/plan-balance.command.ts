import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Stage, stageTitles } from '@hubwright/contracts/work-orders/states';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { nextNumber } from '../../platform/database/counters.ts';
import { toDbDate } from '../../platform/database/dates.ts';

const operation = fieldBalanceOperations.planFieldBalance;
type Planning = Context<typeof operation>;

/** What the shop's own work is over by; a scrapped unit flies no more, but that is for the aircraft's people to see. */
const over: readonly Stage[] = ['released', 'shipped', 'closed'];

/** Balance on the aircraft comes after the shop's release and after installation, and holds no release up. */
export const planBalance = defineCommand(operation, {
  locks: ({ unitId }) => [`unit:${unitId}`],
  async execute(context) {
    const { tx, input, actor, now, newId } = context;
    const unit = await thePropeller(context);
    const aircraft = found(await tx.aircraft.findUnique({ where: { id: input.aircraftId } }), 'This aircraft');
    if (aircraft.customerId !== input.customerId)
      throw new Problem('invalid-input', `${aircraft.registration} is another customer’s`, {}, [
        { pointer: '/aircraftId', detail: 'Choose one of this customer’s aircraft' },
      ]);
    const id = newId();
    const number = await nextNumber(tx, 'FB', 4);
    const { plannedOn, ...asked } = input;
    const made = { plannedOn: toDbDate(plannedOn), plannedBy: actor.personId, plannedAt: now };
    await tx.fieldBalance.create({ data: { id, number, ...asked, ...made } });
    return {
      reply: { id, version: 1, number },
      subjects: [
        { kind: 'field-balance', id, after: 1 },
        { kind: 'unit', id: unit.id },
      ],
      facts: { number, aircraft: aircraft.registration, propeller: unit.serial, airport: input.airport, plannedOn },
    };
  },
});

/** The propeller, with a serial and a model, no work open on it and no other balance. */
async function thePropeller({ tx, input }: Planning) {
  const where = { id: input.unitId };
  const unit = found(await tx.serializedItem.findUnique({ where, include: { model: true } }), 'This propeller');
  if (unit.serial === null || unit.model?.kind !== 'propeller')
    throw new Problem('invalid-input', 'It is no propeller with a serial on record', {}, [
      { pointer: '/unitId', detail: 'Choose a propeller whose serial is on record' },
    ]);
  const open = await tx.workOrder.findFirst({
    where: { unitId: unit.id, stage: { notIn: [...over, 'scrapped'] } },
    select: { number: true, stage: true },
  });
  if (open)
    throw new Problem('not-installed-yet', `${open.number} is in ${stageTitles[open.stage as Stage]}`, {
      workOrder: open.number,
    });
  const other = await tx.fieldBalance.findFirst({
    where: { unitId: unit.id, state: { notIn: ['released', 'abandoned'] } },
    select: { number: true },
  });
  if (other) throw new Problem('balanced-already', `${other.number} is under way`, { fieldBalance: other.number });
  return unit;
}
