import { z } from 'zod';
import { command } from '../operation.ts';
import { changed, id, line, signature } from '../values.ts';

/** Paint mended on a unit outside of its routes. */
export const touchUpOperations = {
  touchUp: command({
    id: 'touch-up',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/touch-up',
    access: ['technician', 'inspector'],
    summary: 'Sign a touch-up of paint. A static balance signed before comes back, and a closed build opens for it',
    input: z.strictObject({ workOrderId: id, where: line, paint: line, reason: line, signature }),
    output: changed
      .extend({
        signOffId: id,
        stage: z.string(),
        /** Steps that come back, by name. */
        again: z.array(z.string()),
      })
      .meta({ id: 'TouchedUp' }),
    signs: 'I touched up the paint as named here',
    touches: ['kits', 'releases'],
    problems: ['wrong-state', 'work-held'],
  }),
} as const;
