import type { MeasureSpec } from '@hubwright/contracts/manuals/measures';
import { Problem } from '@hubwright/contracts/problems';
import { limitsNow } from '@hubwright/rules/blades';
import { RuleError } from '@hubwright/rules/errors';
import type { Tx } from '../../platform/database/client.ts';
import type { Reads } from '../../platform/database/reads.ts';
import { type Route, routesFor } from '../manuals/public.ts';
import { type CarriedOf, carriedBy, carriedValue, openInstallations } from '../units/public.ts';
import type { NewMeasure } from './splice-steps.ts';

/** How the parts of a unit are now, as far as limits depend on it. */
export interface UnitCondition {
  /** The propeller's current diameter, or what its blades are shortened to on this visit; null while it is not on record. */
  readonly diameter: string | null;
  readonly carried: CarriedOf;
}

type Unit = { readonly unitId: string; readonly shortenTo: string | null };

/** What the unit and its parts carry from earlier visits and from this one. */
export async function conditionOf(tx: Tx, { unitId, shortenTo }: Unit): Promise<UnitCondition> {
  const parts = await openInstallations(tx, unitId);
  const carried = await carriedBy(tx, [unitId, ...parts.map(({ itemId }) => itemId)]);
  return { diameter: shortenTo ?? carriedValue(carried.get(unitId), 'diameter'), carried };
}

type Measure = Route['steps'][number]['measures'][number];

/** A measure of the revision with the limits that hold for one part as it is. Throws `limits-missing`. */
export function measureNow(spec: Measure, condition: UnitCondition, itemId: string): NewMeasure {
  const { name, unit, decimals, method, dimension, station } = spec;
  const byDiameter = (spec.byDiameter as MeasureSpec['byDiameter']).map(side);
  const oversizes = (spec.oversizes as MeasureSpec['oversizes']).map(side);
  const oversize =
    condition.carried.get(itemId)?.find(({ kind, place }) => kind === 'oversize' && place === name)?.value ?? null;
  try {
    const table = { low: spec.low, high: spec.high, byDiameter, oversizes };
    const { low, high, basis } = limitsNow(table, { diameter: condition.diameter, oversize });
    const { zone, chart } = spec as unknown as Pick<NewMeasure, 'zone' | 'chart'>;
    return { name, unit, decimals, method, low, high, dimension, station, zone, chart, basis };
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    throw new Problem('limits-missing', `${name}: ${error.message}`, { measure: name });
  }
}

/** Oversize steps that the routes of a unit name, by class of part and measure. Reads only. */
export async function oversizesForReading(
  models: Reads['models'],
  workOrder: Parameters<typeof routesFor>[1] & { scope: string },
): Promise<Map<string, { place: string; steps: string[] }[]>> {
  const routes = await routesFor(models as unknown as Tx, workOrder);
  return new Map(
    routes.map(({ partClass, steps }) => [
      partClass,
      steps
        .flatMap(({ measures }) => measures)
        .map(({ name, oversizes }) => ({
          place: name,
          steps: (oversizes as MeasureSpec['oversizes']).map(({ step }) => step),
        }))
        .filter(({ steps: named }) => named.length > 0),
    ]),
  );
}

function side<S extends { low?: string | undefined; high?: string | undefined }>(given: S) {
  return { ...given, low: given.low ?? null, high: given.high ?? null };
}
