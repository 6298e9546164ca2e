import { Problem } from '@hubwright/contracts/problems';
import { assemblyOperations } from '@hubwright/contracts/units/assembly-operations';
import { normaliseSerial } from '@hubwright/rules/identity';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';
import { refuseFuture } from '../customers/public.ts';
import { refuseNonsense } from './intervals.ts';
import { findOrCreateItem, install, recordTimes } from './public.ts';
import { declaredAtFitting } from './time-facts.ts';

const operation = assemblyOperations.fitWithin;

/** A part of a part: its times are those of what it sits in from that day on, through every level. */
export const fitWithin = defineCommand(operation, {
  locks: (input) => [`item:${input.parentId}`, `serial:${normaliseSerial(input.serial)}`],
  async execute(context) {
    const { tx, input, today } = context;
    const { parentId, position, from, kind, maker, partNumber, serial } = input;
    const parent = found(await tx.serializedItem.findUnique({ where: { id: parentId } }), 'This part');
    if (parent.kind === 'assembly')
      throw wrong('/parentId', 'What sits in a unit itself comes with its visit: receive it, or fit a replacement');
    refuseFuture(from, today, '/from');
    const identity = { kind, modelId: null, maker, partNumber, serial, provisionalName: null };
    const { item, created } = await findOrCreateItem(context, identity);
    if (item.kind !== kind) throw wrong('/kind', `It is on record as ${item.kind.replaceAll('-', ' ')}`);
    await refuseTaken(context, item);
    await install(context, { itemId: item.id, parentId, position, from });
    if (created)
      await recordTimes(context, { itemId: item.id, on: from, basis: declaredAtFitting, ...saidIn(context) });
    await refuseNonsense(context, item.id);
    return {
      reply: { id: item.id, version: item.version },
      subjects: [
        { kind: 'unit', id: item.id },
        { kind: 'unit', id: parentId },
      ],
      facts: { position, from, serial: item.serial, into: parent.serial ?? parent.provisionalName },
      reason: input.basis,
    };
  },
});

function saidIn({ input }: Context<typeof operation>) {
  const known = (value: number | 'unknown') => (value === 'unknown' ? null : value);
  return {
    sinceNewTenths: known(input.sinceNewTenths),
    sinceOverhaulTenths: known(input.sinceOverhaulTenths),
    sinceNewCycles: known(input.sinceNewCycles),
  };
}

/** One place at a time, and one part in a place. */
async function refuseTaken({ tx, input }: Context<typeof operation>, item: { id: string }): Promise<void> {
  const { parentId, position } = input;
  const later = { OR: [{ toDate: null }, { toDate: { gt: toDbDate(input.from) } }] };
  const elsewhere = await tx.installation.findFirst({
    where: { itemId: item.id, ...later },
    include: { parent: true },
  });
  if (elsewhere) {
    const until = elsewhere.toDate ? ` until ${fromDbDate(elsewhere.toDate)}` : ' still';
    const place = `${elsewhere.position} of ${elsewhere.parent.partNumber} ${elsewhere.parent.serial ?? ''}`;
    throw new Problem('installed-elsewhere', `It is on record at ${place}${until}: take it out there first`);
  }
  const there = await tx.installation.findFirst({ where: { parentId, position, ...later }, include: { item: true } });
  if (there)
    throw new Problem('position-taken', `${there.item.partNumber} ${there.item.serial ?? ''} sits at ${position} then`);
}

function wrong(pointer: string, detail: string): Problem {
  return new Problem('invalid-input', detail, {}, [{ pointer, detail }]);
}
