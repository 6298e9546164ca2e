import { customerOperations } from './customers/operations.ts';
import { inventoryOperations } from './inventory/operations.ts';
import { partOperations } from './inventory/part-operations.ts';
import { kitsOperations } from './kits/operations.ts';
import { manualOperations } from './manuals/operations.ts';
import type { Operation } from './operation.ts';
import { peopleOperations } from './people/operations.ts';
import { processOperations } from './processes/operations.ts';
import { purchasingOperations } from './purchasing/operations.ts';
import { supplierOperations } from './purchasing/supplier-operations.ts';
import { serverOperations } from './server/operations.ts';
import { unitOperations } from './units/operations.ts';

/** Every endpoint of the server, by name. */
export const routes = {
  ...serverOperations,
  ...peopleOperations,
  ...customerOperations,
  ...manualOperations,
  ...unitOperations,
  ...inventoryOperations,
  ...purchasingOperations,
  ...kitsOperations,
  ...partOperations,
  ...supplierOperations,
  ...processOperations,
} as const;

/** The same as a list, for generated tables and documents. */
export const allOperations: readonly Operation[] = Object.values(routes);
