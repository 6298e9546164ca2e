import type { Dimension } from '@hubwright/contracts/manuals/words';
import type { MeasuredPart } from '@hubwright/contracts/work-orders/dimension-operations';
import { takenOff } from '@hubwright/rules/blades';
import { remainingOverhauls } from '@hubwright/rules/limits';
import { dimensionKey, type Measured, zoneName } from './measured.ts';

type Row = MeasuredPart['rows'][number];

interface StepOfPart {
  readonly phase: string;
  readonly measures: readonly {
    readonly name: string;
    readonly unit: string;
    readonly low: string | null;
    readonly high: string | null;
    readonly basis: string | null;
    readonly dimension: string | null;
    readonly station: string | null;
    readonly zone: unknown;
  }[];
}

/** A dimension as a part left with it on an earlier visit. */
export interface Past {
  readonly key: string;
  readonly on: string;
  readonly workOrderNumber: string;
  readonly value: string;
}

/** What every overhaul takes a little of. */
const shrinks: readonly Dimension[] = ['width', 'thickness'];

/** One row a dimension and place of a part: its limit, as found, after repair, what went off, earlier visits and what is left. */
export function dimensionRows(
  steps: readonly StepOfPart[],
  measured: readonly Measured[],
  past: readonly Past[],
): Row[] {
  const rows = new Map<string, Row>();
  for (const { measures } of steps)
    for (const measure of measures) {
      if (measure.dimension === null) continue;
      const key = dimensionKey(measure.dimension, measure.station, zoneName(measure.zone));
      // A later step of the route has the limits that hold for what comes back from repair.
      const earlier = rows.get(key);
      rows.set(key, rowOf(measure, { key, measured, past, name: earlier?.name ?? measure.name }));
    }
  return [...rows.values()];
}

function rowOf(
  measure: StepOfPart['measures'][number],
  { key, measured, past, name }: { key: string; measured: readonly Measured[]; past: readonly Past[]; name: string },
): Row {
  const own = measured.filter((one) => one.key === key);
  const [asFound, afterRepair] = [own.findLast((one) => one.isAsFound), own.findLast((one) => !one.isAsFound)];
  const before = past.filter((one) => one.key === key).map(({ key: _, ...rest }) => rest);
  const dimension = measure.dimension as Dimension;
  const { unit, low, high, basis, station } = measure;
  return {
    ...{ dimension, station, zone: zoneName(measure.zone), name, unit, low, high, basis },
    asFound: reading(asFound),
    afterRepair: reading(afterRepair),
    removed: asFound && afterRepair ? takenOff(asFound.value, afterRepair.value) : null,
    past: before,
    remaining:
      shrinks.includes(dimension) && low !== null
        ? remaining(low, [
            ...before.map(({ value }) => value),
            ...[afterRepair ?? asFound].flatMap((one) => one?.value ?? []),
          ])
        : null,
  };
}

function reading(one: Measured | undefined): Row['asFound'] {
  return one ? { value: one.value, pass: one.pass, signedAt: one.signedAt.toISOString() } : null;
}

/** Counted visit by visit: the shop knows what each of its own visits took, not what was done elsewhere between them. */
function remaining(low: string, values: readonly string[]): Row['remaining'] {
  const history = values.map((value, index) => ({ overhaul: index + 1, value: Number(value) }));
  const { remaining: overhauls, basis } = remainingOverhauls({ history, serviceLimit: Number(low) });
  return { overhauls, basis };
}
