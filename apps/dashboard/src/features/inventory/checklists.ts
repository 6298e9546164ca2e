import { receivingOperations } from '@hubwright/contracts/inventory/receiving-operations';
import type { Reply } from '@hubwright/contracts/operation';
import { queryFor } from '../../api/query.ts';
import type { Part } from './lots.ts';

export type Checklist = Reply<typeof receivingOperations.listChecklists>['rows'][number];

export const checklistQuery = (partClass: Part['class']) =>
  queryFor(receivingOperations.listChecklists, { partClass, limit: 1 });
