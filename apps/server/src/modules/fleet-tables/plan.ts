import type { FleetKind } from '@hubwright/contracts/imports/fleet-kinds';
import { Problem } from '@hubwright/contracts/problems';
import type { Ask, Plan, Table } from '../imports/public.ts';
import { planFleet } from './plan-fleet.ts';
import { planReadings } from './plan-readings.ts';
import type { FleetModels } from './shapes.ts';

const planners = { fleet: planFleet, readings: planReadings };

interface Staged {
  readonly kind: FleetKind;
  readonly customerId: string | null;
  readonly rows: Table['rows'];
}

/** What a customer's table would do: the preview shows it, the command does it. Throws `import-gone` for a table of nobody. */
export function planTable(
  models: FleetModels,
  { kind, customerId, rows }: Staged,
  given: { readonly ask: Ask; readonly mapping: Table['mapping']; readonly today: string },
): Promise<Plan> {
  if (customerId === null) throw new Problem('import-gone', 'No table of a customer waits under this number');
  return planners[kind](models, { ...given, rows, customerId });
}
