import { Problem } from '@hubwright/contracts/problems';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { expectedPapers } from '@hubwright/contracts/work-orders/states';
import { addDays } from '@hubwright/rules/dates';
import { normaliseSerial } from '@hubwright/rules/identity';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { nextNumber } from '../../platform/database/counters.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { explodeKit } from '../kits/public.ts';
import { currentRevision } from '../manuals/public.ts';
import { bookIn, identities, refuseInShop } from './arriving-unit.ts';
import { refuseForeign, refuseWrongHours } from './check-against-record.ts';
import { prompts, refuseParts, refuseScope } from './check-arrival.ts';
import { goByCurrentDocuments } from './document-set.ts';

type Receiving = Context<typeof workOrderOperations.receiveUnit>;

// Until a promise is made, the kit is planned for the day most units reach build-up; common practice, no source.
const daysUntilBuild = 14;

/** The desk books the box in; the inspector looks later. What cannot be right is refused here, what is not known stays unknown. */
export const receiveUnit = defineCommand(workOrderOperations.receiveUnit, {
  locks: (input) =>
    [input.serial, ...input.parts.map((part) => part.serial)].flatMap((serial) =>
      serial === null ? [] : [`serial:${normaliseSerial(serial)}`],
    ),
  async execute(context) {
    const { tx, input, newId } = context;
    const { model, revision, on } = await checked(context);
    const number = await nextNumber(tx, 'WO', 4);
    const arriving = identities(input, model, number);
    await refuseInShop(tx, arriving);
    await refuseWrongHours(context, { ...model, on });
    const id = newId();
    const itemIds = await bookIn(context, input, { identities: arriving, on, workOrderId: id, number });
    const unitId = itemIds[0] ?? '';
    await tx.workOrder.create({ data: { ...columns(context, on), id, number, unitId, revisionId: revision.id } });
    await writeBeside(context, id);
    await goByCurrentDocuments(tx, { id, modelId: model.id });
    const kit = await explodeKit(context, { workOrderId: id, needBy: addDays(on, daysUntilBuild) });
    return {
      reply: {
        id,
        version: 1,
        number,
        unitId,
        kitId: kit?.id ?? null,
        paperworkMissing: expectedPapers.filter((paper) => !input.paperwork.includes(paper)),
        prompts: prompts(input),
      },
      subjects: [
        { kind: 'work-order', id, after: 1 },
        ...itemIds.map((itemId) => ({ kind: 'unit', id: itemId })),
        ...(kit ? [{ kind: 'kit', id: kit.id, after: kit.version }] : []),
      ],
      facts: { number, unitId, revision: revision.revision, stage: 'received', consent: 'estimate-due' },
    };
  },
});

async function checked({ tx, input, today }: Receiving) {
  const model = found(await tx.unitModel.findUnique({ where: { id: input.modelId } }), 'This model');
  found(await tx.customer.findUnique({ where: { id: input.customerId } }), 'This customer');
  const on = input.receivedOn ?? today;
  if (on > today)
    throw new Problem('invalid-input', 'A unit cannot be received in the future', {}, [
      { pointer: '/receivedOn', detail: 'This day is still to come' },
    ]);
  refuseScope(input, model);
  refuseParts(input, model);
  await refuseForeign(tx, input);
  return { model, revision: await currentRevision(tx, model.manualId), on };
}

function columns({ input, now }: Receiving, on: string) {
  const { customerId, modelId, scope, reason, events, paperwork, paperworkNote, priority } = input;
  return {
    ...{ customerId, modelId, scope, reason, events, paperwork, paperworkNote, priority },
    aircraftId: input.aircraftId ?? null,
    applicationId: input.applicationId ?? null,
    stage: 'received',
    stageSince: now,
    consent: 'estimate-due',
    consentSince: now,
    receivedOn: toDbDate(on),
  };
}

async function writeBeside({ tx, input, now, actor, newId }: Receiving, workOrderId: string): Promise<void> {
  await tx.looseItem.createMany({ data: input.looseItems.map((item) => ({ ...item, id: newId(), workOrderId })) });
  if (!input.accidentHold) return;
  // Nobody touches it before whoever investigates says so; a manager hears that and lifts.
  await tx.hold.create({
    data: {
      id: newId(),
      workOrderId,
      kind: 'accident',
      reason: input.accidentHold,
      liftedByRole: 'manager',
      placedBy: actor.personId,
      placedAt: now,
    },
  });
}
