import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { type Pointed, Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { performedAt, requireTurn, type SignedStep, stepToSign, writeStepSignature } from '../work-orders/public.ts';
import { lotLocks, theLot } from './lot.ts';
import { newestChecks } from './media.ts';

const operation = peeningOperations.signPeeningLot;
type Signing = Context<typeof operation>;
type Lot = Awaited<ReturnType<typeof theLot>>;

/** The peening of every part is signed by one act; its parts go on, and the lot waits for its closing strips. */
export const signLot = defineCommand(operation, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute(context) {
    const { tx, input, actor, now, expectedVersion } = context;
    const lot = await theLot(tx, input.lotId, expectedVersion);
    if (lot.state !== 'open') throw new Problem('lot-not-open', `${lot.number} is ${lot.state}`);
    refuseShort(lot, input.coverage);
    await refuseFailed(context, lot);
    const signed = [];
    for (const { stepId } of lot.parts) signed.push(await signPart(context, lot, stepId));
    const coverage = input.coverage;
    const version = lot.version + 1;
    const done = { state: 'peened', coverage, signedBy: actor.personId, signedAt: now, version };
    await tx.peeningLot.update({ where: { id: lot.id }, data: done });
    const workOrders = [...new Set(signed.map(({ step }) => step.traveler.workOrderId))];
    return {
      reply: { id: lot.id, version, signOffIds: signed.map(({ written }) => written.signOffId) },
      subjects: [
        { kind: 'peening-lot', id: lot.id, before: lot.version, after: version },
        ...signed.map(({ step: { traveler }, written }) => ({
          ...{ kind: 'traveler', id: traveler.id, before: traveler.version, after: written.travelerVersion },
        })),
        ...workOrders.map((id) => ({ kind: 'work-order', id })),
      ],
      ...(signed[0] ? { authorisation: signed[0].written.authorisation } : {}),
      facts: { number: lot.number, coverage, travelers: signed.map(({ step }) => step.traveler.number) },
    };
  },
});

/** Throws `coverage-short` unless every area has what the parts ask for. */
function refuseShort({ spec }: Lot, coverage: Signing['input']['coverage']): void {
  const wrong = spec.areas.flatMap(({ name }): Pointed[] => {
    const index = coverage.findIndex(({ area }) => area === name);
    const percent = coverage[index]?.percent;
    if (percent !== undefined && percent >= spec.coverage) return [];
    const said = percent === undefined ? 'not said' : `${percent} %`;
    return [
      {
        pointer: `/coverage/${Math.max(0, index)}/percent`,
        detail: `${name}: ${said}; ${spec.coverage} % is asked for`,
      },
    ];
  });
  const [first] = wrong;
  if (first) throw new Problem('coverage-short', first.detail, {}, wrong);
}

/** Throws `media-failed` when what it was begun with failed a check since: nothing is peened on with it. */
async function refuseFailed({ tx }: Signing, { mediaId, number }: Lot): Promise<void> {
  if (mediaId === null) return;
  const newest = await tx.peeningCheck.findFirst({ where: { mediaId }, include: { media: true }, ...newestChecks });
  if (newest && !newest.passed)
    throw new Problem('media-failed', `${number} runs with ${newest.media.code}: ${newest.reasons.join(' ')}`);
}

async function signPart(context: Signing, lot: Lot, stepId: string) {
  const { tx, input } = context;
  const step: SignedStep = await stepToSign(tx, stepId);
  await requireTurn(tx, step, performedAt(context));
  const { machine, program } = lot.setup;
  const form = (step.form as { name: string }[]).map(({ name }) => ({ name, value: `as ${lot.number}` }));
  const written = await writeStepSignature(context, step, {
    entry: { ...input, values: [], form },
    signature: {
      result: 'pass',
      meaning: operation.signs ?? '',
      load: { number: lot.number, equipment: `${machine.code}, ${program}` },
    },
  });
  return { step, written };
}
