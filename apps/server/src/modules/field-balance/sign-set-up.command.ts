import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { instrumentFor } from '../work-orders/public.ts';
import { balanceLock, dataOf, refuseUnless, stepOn, theBalance, type WholeBalance } from './field-balance.ts';
import { maySign, writeSupervised } from './supervised.ts';
import { ownOf, placeIn, planeOf, refuseTooHeavy, standingOf } from './weights.ts';

const operation = fieldBalanceOperations.signFieldSetUp;
type Signing = Context<typeof operation>;

/** The sheet before any run. A new sheet (another day, another sensor place) begins its runs anew: what was read before it does not compare. */
export const signSetUp = defineCommand(operation, {
  locks: (input) => [balanceLock(input)],
  async execute(context) {
    const { tx, input, today } = context;
    const balance = await theBalance(context, input.fieldBalanceId);
    refuseUnless(balance, ['planned', 'set-up', 'runs', 'weights-fitted']);
    const authorised = await maySign(context, input.supervisorId);
    const spec = await specFor(context, balance);
    refuseSheet(context, balance, spec);
    const { instrumentId, sheet } = sheetOf(input);
    const asked = { kind: 'vibration-analyser', instrumentId, day: today };
    const instrument = await instrumentFor(tx, asked);
    const content = { number: balance.number, aircraft: balance.aircraft.registration, sheet, instrument };
    const whole = { ...content, specId: spec.id, source: spec.source };
    const signed = { balance, kind: 'set-up', meaning: operation.signs ?? '', instrumentId, content: whole } as const;
    const { id: setUpId, contentHash } = await writeSupervised(context, signed, authorised);
    const { version, subject } = await stepOn(tx, balance, { state: 'set-up', specId: spec.id });
    return {
      reply: { id: balance.id, version, setUpId },
      subjects: [subject],
      authorisation: { ...authorised.authorisation },
      facts: { ...content, source: spec.source, contentHash },
    };
  },
});

/** What is signed: neither whose secret it was nor for which order. */
function sheetOf(input: Signing['input']) {
  const { fieldBalanceId: _, signature: __, supervisorId: ___, supervisorSignature: ____, ...said } = input;
  const { instrumentId, ...sheet } = said;
  return { instrumentId, sheet };
}

/** The newest data of the model, or `no-balance-data`. */
async function specFor({ tx }: Signing, { unit }: WholeBalance) {
  const spec = await tx.fieldBalanceSpec.findFirst({
    where: { modelId: unit.modelId ?? '' },
    orderBy: [{ enteredAt: 'desc' }, { id: 'desc' }],
  });
  if (!spec)
    throw new Problem('no-balance-data', `Nothing is on record for ${unit.model?.designation ?? 'this model'}`);
  return spec;
}

/** Throws `wind-too-strong`, `weights-standing`, `place-unknown` or `too-heavy`. */
function refuseSheet({ input }: Signing, balance: WholeBalance, spec: { data: unknown }): void {
  const data = dataOf(spec);
  if (Number(input.wind) > Number(data.mostWind))
    throw new Problem('wind-too-strong', `${input.wind} kt; ${data.mostWind} kt is the limit`, {}, [
      { pointer: '/wind', detail: `Above ${data.mostWind} kt` },
    ]);
  const own = ownOf(standingOf(balance));
  const moved = own.find(({ place, angle }) => placeIn(data, place)?.angle !== angle);
  if (moved)
    throw new Problem('weights-standing', `The new data has no place ${moved.place} as it was; take it off first`);
  const unread = input.secondSensor ? undefined : own.find(({ place }) => planeOf(data, place) === 1);
  if (unread)
    throw new Problem(
      'weights-standing',
      `A weight stands in ${unread.place}, in the second plane: name a second sensor, or take it off first`,
    );
  const found = input.found.flatMap(({ place, mass, stays }) =>
    stays ? [{ place, pieces: 1, mass: Number(mass) }] : [],
  );
  refuseTooHeavy(data, [...found, ...own.map((weight) => ({ ...weight, pieces: 0 }))], '/found');
}
