import { inventoryOperations } from './inventory/operations.ts';
import type { Operation } from './operation.ts';
import { peopleOperations } from './people/operations.ts';
import { serverOperations } from './server/operations.ts';

/** Every endpoint of the server, by name. */
export const routes = {
  ...serverOperations,
  ...peopleOperations,
  ...inventoryOperations,
} as const;

/** The same as a list, for generated tables and documents. */
export const allOperations: readonly Operation[] = Object.values(routes);
