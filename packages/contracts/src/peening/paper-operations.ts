import { z } from 'zod';
import { read } from '../operation.ts';
import { id } from '../values.ts';

/** Peening on paper. */
export const peeningPaperOperations = {
  peeningLotPdf: read({
    id: 'peening-lot-pdf',
    noun: 'peening',
    path: '/api/peening/lots/:lotId/pdf',
    access: 'signed-in',
    summary:
      'A peening lot on paper: machine, program, media with its check, areas with bands and strips, coverage, parts, signatures and what was decided',
    input: z.strictObject({ lotId: id }),
    output: z.any(),
    produces: 'application/pdf',
  }),
  peeningSetupPdf: read({
    id: 'peening-setup-pdf',
    noun: 'peening',
    path: '/api/peening/setups/:setupId/pdf',
    access: 'signed-in',
    summary:
      'A qualified program on paper: set-up, media, and for each area its strips over time with the curve through them',
    input: z.strictObject({ setupId: id }),
    output: z.any(),
    produces: 'application/pdf',
  }),
} as const;
