import { readingsOperations } from '@hubwright/contracts/customers/readings-operations';
import type { Input } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { MeterFacts } from './meter-facts.ts';
import { figureField, figureSaid } from './meter-figure.ts';
import { type JudgedReading, judgeReadings, type SaidReading, writeReadings } from './readings-batch.ts';

const operation = readingsOperations.recordReadings;

/** A round by telephone: a figure for each aircraft, all of it on record or none. */
export const recordReadings = defineCommand(operation, {
  locks: ({ rows }) => rows.map(({ aircraftId }) => `aircraft:${aircraftId}`),
  async execute(context) {
    const { tx, input, today } = context;
    const customer = found(await tx.customer.findUnique({ where: { id: input.customerId } }), 'This customer');
    const ids = [...new Set(input.rows.map(({ aircraftId }) => aircraftId))];
    const own = await tx.aircraft.findMany({
      where: { id: { in: ids }, customerId: customer.id },
      select: { id: true },
    });
    refuseOthers(input, new Set(own.map(({ id }) => id)));
    const judged = judgeReadings(await MeterFacts.of(tx, ids), input.rows.map(saidIn(input)), today);
    refuseFaults(judged);
    const fresh = judged.filter(({ same }) => !same);
    await writeReadings(context, fresh, input.basis);
    return {
      reply: { id: customer.id, version: customer.version, recorded: fresh.length, same: judged.length - fresh.length },
      subjects: [{ kind: 'customer', id: customer.id }, ...ids.map((id) => ({ kind: 'aircraft', id }))],
      facts: { readOn: input.readOn, recorded: fresh.length, basis: input.basis },
    };
  },
});

const saidIn =
  ({ readOn }: Input<typeof operation>) =>
  (
    { aircraftId, meter, replaced, sure, ...figures }: Input<typeof operation>['rows'][number],
    at: number,
  ): SaidReading => ({
    ...{ aircraftId, meter, on: readOn, tenths: figureSaid(meter, figures, `/rows/${at}`), sure },
    replaced: replaced && { ...replaced, newTenths: 0 },
  });

function refuseOthers({ rows }: Input<typeof operation>, own: ReadonlySet<string>): void {
  const errors = rows.flatMap(({ aircraftId }, at) =>
    own.has(aircraftId) ? [] : [{ pointer: `/rows/${at}/aircraftId`, detail: 'Not an aircraft of this customer' }],
  );
  if (errors.length > 0) throw new Problem('invalid-input', 'Not every aircraft is this customer’s', {}, errors);
}

/** What is impossible comes before what is only unlikely; every row is named. */
function refuseFaults(judged: readonly JudgedReading[]): void {
  const faults = judged.flatMap((row, at) => row.faults.map((fault) => ({ ...fault, at, meter: row.said.meter })));
  const impossible = faults.filter(({ kind }) => kind === 'out-of-line');
  const errors = (impossible.length > 0 ? impossible : faults).map(({ at, meter, field, detail }) => ({
    pointer: field === 'on' ? '/readOn' : `/rows/${at}/${field === 'tenths' ? figureField(meter) : field}`,
    detail,
  }));
  const [first] = errors;
  if (first)
    throw new Problem(impossible.length > 0 ? 'reading-out-of-line' : 'reading-unlikely', first.detail, {}, errors);
}
