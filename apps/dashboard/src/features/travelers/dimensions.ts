import { dimensionOperations } from '@hubwright/contracts/work-orders/dimension-operations';
import { queryFor } from '../../api/query.ts';

export const dimensionsQuery = (workOrderId: string) =>
  queryFor(dimensionOperations.workOrderDimensions, { workOrderId });
