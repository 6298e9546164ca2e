import { z } from 'zod';
import { partClass } from '../manuals/words.ts';
import { command } from '../operation.ts';
import { changed, cyclesSinceNew, date, hoursTenths, id, line } from '../values.ts';

const serial = z.string().trim().min(1, 'Enter the serial').max(40);

/** Parts of parts: a clamp of a blade, the flyweights of a governor's head. What sits in a unit itself comes with its visits. */
export const assemblyOperations = {
  fitWithin: command({
    id: 'fit-within',
    noun: 'units',
    path: '/api/units/:parentId/parts',
    access: ['inspector'],
    summary:
      'Record that a part with a serial of its own sits in another part, from a day on; it flies where that one flies',
    input: z.strictObject({
      parentId: id,
      position: line,
      kind: partClass.exclude(['assembly']),
      maker: line,
      partNumber: line,
      serial,
      from: date,
      /** As its papers say for that day; of a part on record already its own times go on. */
      sinceNewTenths: hoursTenths.default('unknown'),
      sinceOverhaulTenths: hoursTenths.default('unknown'),
      sinceNewCycles: cyclesSinceNew.default('unknown'),
      /** Where it was seen: a teardown, a card, a log entry. */
      basis: line,
    }),
    output: changed,
    touches: ['work-orders', 'releases', 'due-dates'],
    problems: ['installed-elsewhere', 'position-taken', 'interval-impossible', 'hours-wrong'],
  }),
  takeOutOf: command({
    id: 'take-out-of',
    noun: 'units',
    path: '/api/units/:itemId/take-out',
    access: ['inspector'],
    summary: 'Record that a part was taken out of the part it sat in; it keeps what it flew there',
    input: z.strictObject({ itemId: id, on: date, basis: line }),
    output: changed,
    touches: ['work-orders', 'releases', 'due-dates'],
    problems: ['interval-impossible'],
  }),
} as const;
