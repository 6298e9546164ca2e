import { kitsOperations } from '@hubwright/contracts/kits/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { queryFor } from '../../api/query.ts';

export const kitQuery = (kitId: string) => queryFor(kitsOperations.kitDetail, { kitId });
export type Kit = Reply<typeof kitsOperations.kitDetail>;
export type KitLine = Kit['lines'][number];
export type TrayLot = Kit['tray'][number];
