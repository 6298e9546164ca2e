import type { Reply } from '@hubwright/contracts/operation';
import type { orderOperations } from '@hubwright/contracts/purchasing/order-operations';

export type Chase = Reply<typeof orderOperations.listToChase>['rows'][number];
