import { z } from 'zod';
import { changed, id } from '../values.ts';

/** What a scanner sends: the code on a lot's label. */
export const lotCode = z.string().trim().toUpperCase().min(1).max(60);

/** What a scan did: the line it served and what that line still needs. */
export const scanned = changed
  .extend({
    lotCode: z.string(),
    lines: z.array(z.object({ lineId: id, position: z.string(), quantity: z.int(), stillNeeds: z.int() })),
    movementIds: z.array(id),
  })
  .meta({ id: 'KitScanned' });
