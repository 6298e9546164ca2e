import { z } from 'zod';
import { read } from '../operation.ts';
import { id } from '../values.ts';

/** Travelers on paper. */
export const printOperations = {
  travelerPdf: read({
    id: 'traveler-pdf',
    noun: 'work-orders',
    path: '/api/travelers/:travelerId/pdf',
    access: 'signed-in',
    summary:
      'A traveler on paper: every step with its limits, what is signed, room for what is not, and a barcode that leads back to each',
    input: z.strictObject({ travelerId: id }),
    output: z.any(),
    produces: 'application/pdf',
  }),
  travelersPdf: read({
    id: 'travelers-pdf',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/travelers/pdf',
    access: 'signed-in',
    summary: 'All travelers of a work order on paper, each beginning on a sheet of its own',
    input: z.strictObject({ workOrderId: id }),
    output: z.any(),
    produces: 'application/pdf',
  }),
} as const;
