import type { PeeningSpec } from '@hubwright/contracts/manuals/measures';
import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { Problem } from '@hubwright/contracts/problems';
import { canonicalJson } from '@hubwright/rules/chain';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { nextNumber } from '../../platform/database/counters.ts';
import { requireAuthorisation } from '../people/public.ts';
import { requireTurn, type SignedStep, stepToSign, workOrderLocks } from '../work-orders/public.ts';
import { judgeStrips, stripsOf } from './lot.ts';
import { fitMedia } from './media.ts';
import { refuseMeter } from './media-hours.ts';
import { currentSetup, refuseUnqualified, type Setup } from './setup.ts';

const operation = peeningOperations.startPeeningLot;
type Starting = Context<typeof operation>;

/** A lot begins with opening strips inside every band, on a program qualified for what its parts ask for. */
export const startLot = defineCommand(operation, {
  locks: async (input, tx) => {
    const setup = await tx.peeningSetup.findUnique({ where: { id: input.setupId }, select: { machineId: true } });
    return [`peening-machine:${setup?.machineId}`, ...(await workOrderLocks(tx, input.stepIds))];
  },
  async execute(context) {
    const { tx, input, actor, now, today, newId } = context;
    const setup = await currentSetup(tx, input.setupId);
    const need = { process: 'shot-peening', level: 'perform', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const steps = await peenable(context);
    const spec = steps[0]?.peening as unknown as PeeningSpec;
    refuseUnqualified(setup, spec);
    const media = await theMedia(context, setup, spec);
    const opening = openingStrips(input.opening, spec);
    const lot = { id: newId(), number: await nextNumber(tx, 'PL', 4), setupId: setup.id, areas: spec };
    const begun = { opening, startedBy: actor.personId, startedAt: now };
    const shot = { mediaId: media.id, meterHours: input.meterHours ?? null };
    await tx.peeningLot.create({ data: { ...lot, ...begun, ...shot } });
    await tx.peeningPart.createMany({ data: steps.map(({ id }) => ({ id: newId(), lotId: lot.id, stepId: id })) });
    const travelers = steps.map(({ traveler }) => traveler.number);
    return {
      reply: { id: lot.id, version: 1, number: lot.number },
      subjects: [
        { kind: 'peening-lot', id: lot.id, after: 1 },
        { kind: 'peening-machine', id: setup.machineId },
        ...steps.map(({ travelerId }) => ({ kind: 'traveler', id: travelerId })),
      ],
      authorisation: { ...authorisation },
      facts: {
        number: lot.number,
        machine: setup.machine.code,
        ...{ program: setup.program, media: media.code, spec, opening, travelers },
      },
    };
  },
});

/** Every opening strip is flat, there and inside its band. Throws `strips-missing`, `strip-bowed` or `strip-outside`. */
function openingStrips(entered: Starting['input']['opening'], spec: PeeningSpec) {
  const opening = stripsOf(spec, entered, 'opening');
  const { reasons } = judgeStrips(spec, opening);
  const outside = reasons.filter((reason) => reason.includes(', before'));
  if (outside.length > 0) throw new Problem('strip-outside', outside.join(' '), { reasons: outside });
  return opening;
}

/** What is in the machine is what the parts ask for, and its check holds: another lot of the same size may have come since. */
async function theMedia({ tx, input, today }: Starting, { machine, program }: Setup, spec: PeeningSpec) {
  const media = await fitMedia(tx, machine, { today, hours: input.meterHours });
  await refuseMeter(tx, media, input.meterHours);
  if (media.size.toUpperCase() !== spec.mediaSize.toUpperCase())
    throw new Problem(
      'media-wrong',
      `${machine.code}, ${program}: ${media.size} is in it; the parts ask for ${spec.mediaSize}`,
    );
  return media;
}

/** Steps whose turn it is, all asking for the same, none in another lot. */
async function peenable({ tx, input, now }: Starting): Promise<SignedStep[]> {
  const steps: SignedStep[] = [];
  for (const id of new Set(input.stepIds)) {
    const step = await stepToSign(tx, id);
    const { number } = step.traveler;
    if (step.peening === null) throw new Problem('not-peened-so', `${number}: “${step.title}” asks for no strips`);
    await requireTurn(tx, step, now);
    steps.push(step);
  }
  const [first] = steps;
  const other = steps.find(({ peening }) => canonicalJson(peening) !== canonicalJson(first?.peening));
  if (other)
    throw new Problem(
      'not-peened-so',
      `${other.traveler.number} asks for other peening than ${first?.traveler.number}`,
    );
  const taken = await tx.peeningPart.findFirst({
    where: { stepId: { in: steps.map(({ id }) => id) }, open: true },
    include: { lot: true },
  });
  if (taken) throw new Problem('in-other-lot', `A part is in ${taken.lot.number}`, { lot: taken.lot.number });
  return steps;
}
