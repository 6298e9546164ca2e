import type { Reply } from '@hubwright/contracts/operation';
import { keepingOperations } from '@hubwright/contracts/units/keeping-operations';
import { queryFor } from '../../api/query.ts';

export const keepingQuery = (itemId: string) => queryFor(keepingOperations.unitKeeping, { itemId });
export type Keeping = Reply<typeof keepingOperations.unitKeeping>;
export type StorageRow = Keeping['storage'][number];
