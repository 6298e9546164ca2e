import { z } from 'zod';
import { decimal, line } from '../values.ts';
import { isOnce, sealPositions } from './angle-sheet.ts';

/** The ways a blade is moved by hand to feel what its retention leaves free; common practice, no source. */
const playDirections = ['fore-and-aft', 'edgewise', 'in-and-out', 'rotation'] as const;

const unit = z.string().trim().min(1).max(20);
const positive = decimal.refine((text) => Number(text) >= 0, { message: 'This is not below zero' });
const low = { message: 'The low limit is above the high one', path: ['low'] };
const seconds = z
  .strictObject({ low: positive, high: positive })
  .refine((band) => Number(band.low) < Number(band.high), low);
const band = z
  .strictObject({ low: positive, high: positive, unit })
  .refine((given) => Number(given.low) < Number(given.high), low);

const leakTest = z.strictObject({
  media: z.array(line).min(1).max(6),
  /** How often the pitch is run from stop to stop under pressure before the loss is read. */
  cycles: z.int().min(0).max(100),
  pressure: band,
  /** At least so long, in minutes. */
  minutes: positive,
  /** At most so much in that time, in the unit of the pressure. */
  lost: positive,
});

/** What of a built propeller is tried before its build is closed; what is left out is not asked for. Bounds inclusive. */
export const functionTestSheet = z
  .strictObject({
    kind: z.literal('function-test'),
    blades: z.int().min(2).max(8),
    leak: leakTest.optional(),
    /** Of every blade, in each of the four directions. */
    play: z
      .array(z.strictObject({ direction: z.enum(playDirections), most: positive, unit }))
      .length(playDirections.length, 'Play has a limit in each of the four directions')
      .refine((play) => isOnce(play.map(({ direction }) => direction)), { message: 'Name each direction once' })
      .optional(),
    /** What it takes to turn each blade. */
    friction: band.optional(),
    /** From stop to stop, in seconds. */
    travel: z.strictObject({ up: seconds, down: seconds }).optional(),
    seals: sealPositions,
  })
  .refine(({ leak, play, friction, travel }) => leak || play || friction || travel, {
    message: 'A function test asks for a leak test, play, friction or travel time',
  })
  .meta({ id: 'FunctionTestSheet' });
