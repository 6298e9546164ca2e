import { z } from 'zod';
import { partNamed } from '../inventory/shapes.ts';
import { command, read } from '../operation.ts';
import { changed, id, instant, money, signature } from '../values.ts';
import { signingProblems } from './signing-problems.ts';
import { measuredValues, performed, supervised, supervisedMeaning } from './traveler-shapes.ts';

const repeatable = z
  .object({
    stepId: id,
    title: z.string(),
    signedAt: instant,
    /** What the failed test is put down to touches this. */
    offered: z.boolean(),
  })
  .meta({ id: 'RepeatableStep' });

const sealInUnit = z
  .object({
    lineId: id,
    kitCode: z.string(),
    position: z.string(),
    part: partNamed,
    quantity: z.int(),
    unitPrice: z.string(),
    cost: money,
    offered: z.boolean(),
  })
  .meta({ id: 'SealInUnit' });

const shopCostRow = z
  .object({
    id,
    part: z.object({ number: z.string(), description: z.string() }),
    position: z.string(),
    quantity: z.int(),
    unitPrice: z.string(),
    cost: money,
    /** The failed test in words, and why. */
    cause: z.string(),
    reason: z.string(),
    at: instant,
  })
  .meta({ id: 'ShopCostRow' });

export const reopenOperations = {
  reopening: read({
    id: 'reopening',
    noun: 'work-orders',
    path: '/api/traveler-steps/:stepId/reopening',
    access: 'signed-in',
    summary:
      'What a failed test of a built unit may open again: signed build steps, and the seals that are in the unit',
    input: z.strictObject({ stepId: id }),
    output: z
      .object({
        /** Steps after the build that are signed again in any case. */
        follow: z.array(z.string()),
        steps: z.array(repeatable),
        seals: z.array(sealInUnit),
      })
      .meta({ id: 'Reopening' }),
  }),
  reopenBuild: command({
    id: 'reopen-build',
    noun: 'work-orders',
    path: '/api/traveler-steps/:stepId/reopen-build',
    access: ['technician', 'inspector'],
    summary:
      'Sign a test of a built unit as failed: the build opens again, named seals are scrapped and come anew at the shop’s cost',
    input: z.strictObject({
      stepId: id,
      values: measuredValues,
      ...performed,
      reason: z.string().trim().min(3, 'Say what failed and why').max(200),
      /** Signed steps of the build that are done again; the test itself always is. */
      repeat: z.array(id).max(40).default([]),
      /** Kit lines whose seals in the unit are used up. */
      seals: z.array(id).max(200).default([]),
      ...supervised,
      signature,
    }),
    output: changed
      .extend({
        signOffId: id,
        stage: z.string(),
        /** Titles, in the order they are done. */
        steps: z.array(z.string()),
        seals: z.int(),
        cost: money,
      })
      .meta({ id: 'BuildReopened' }),
    countersigns: supervisedMeaning,
    signs:
      'I made this test as entered and it failed; the named steps of the build are done again, and the named seals are not used again',
    touches: ['kits', 'inventory', 'releases', 'quotes'],
    problems: [
      ...signingProblems,
      'in-other-load',
      'inside-limits',
      'no-build-test',
      'not-repeatable',
      'seal-not-in-unit',
      'repairs-used-up',
      'already-corrected',
    ],
  }),
  shopCost: read({
    id: 'shop-cost',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/shop-cost',
    access: 'signed-in',
    summary: 'Parts of a work order that the shop pays for, because a test failed: which, why and what they are worth',
    input: z.strictObject({ workOrderId: id }),
    output: z.object({ rows: z.array(shopCostRow), total: money }).meta({ id: 'ShopCost' }),
  }),
} as const;
