import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { type Pointed, Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { performedAt, requireTurn, type SignedStep, stepToSign, writeStepSignature } from '../work-orders/public.ts';
import { lotLocks, theLot } from './lot.ts';

const operation = peeningOperations.signPeeningLot;
type Signing = Context<typeof operation>;
type Lot = Awaited<ReturnType<typeof theLot>>;

/** The peening of every part is signed by one act; its parts go on, and the lot waits for its closing strips. */
export const signLot = defineCommand(operation, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute(context) {
    const { tx, input, expectedVersion } = context;
    const lot = await theLot(tx, input.lotId, expectedVersion);
    if (lot.state !== 'open') throw new Problem('lot-not-open', `${lot.number} is ${lot.state}`);
    refuseShort(lot, input.coverage);
    const signed = [];
    for (const { stepId } of lot.parts) signed.push(await signPart(context, lot, stepId));
    const coverage = input.coverage;
    const version = lot.version + 1;
    await tx.peeningLot.update({ where: { id: lot.id }, data: { state: 'peened', coverage, version } });
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
