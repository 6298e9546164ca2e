import { z } from 'zod';
import { command } from '../operation.ts';
import { changed, id, line, signature } from '../values.ts';

/** The other blades of a set, once one is rejected. */
export const setOperations = {
  decideSet: command({
    id: 'decide-set',
    noun: 'findings',
    path: '/api/findings/:findingId/set',
    access: ['inspector'],
    versioned: true,
    summary:
      'After a blade was rejected: decide of each other blade whether it stays with a replacement matched to it or is rejected with it',
    input: z.strictObject({
      findingId: id,
      mates: z
        .array(z.strictObject({ travelerId: id, stays: z.boolean() }))
        .min(1)
        .max(12),
      reason: line,
      signature,
    }),
    output: changed.extend({ rejected: z.array(z.string()) }).meta({ id: 'SetDecided' }),
    signs: 'I compared the blades that are left with what the named manual revision allows within a set, and decide so',
    touches: ['work-orders', 'quotes', 'kits', 'units', 'releases'],
    problems: [
      'set-decided',
      'nothing-to-replace',
      'mates-unanswered',
      'revision-superseded',
      'documents-changed',
      'wrong-state',
    ],
  }),
} as const;
