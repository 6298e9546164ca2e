import type { Reply } from '@hubwright/contracts/operation';
import type { heldOperations } from '@hubwright/contracts/purchasing/held-operations';

export type Held = Reply<typeof heldOperations.listHeld>['rows'][number];
