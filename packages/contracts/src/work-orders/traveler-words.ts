import { z } from 'zod';
import { partClass } from '../manuals/words.ts';
import { id } from '../values.ts';

/** Why a step cannot be signed now: the problem it would be refused with, and in words. */
export const stepBlock = z.object({ problem: z.string(), detail: z.string() }).meta({ id: 'StepBlock' });

/** Which part a line is about: its traveler, unit's work order, class, position and serial. */
export const travelerNamed = {
  travelerId: id,
  travelerNumber: z.string(),
  workOrderId: id,
  workOrderNumber: z.string(),
  partClass,
  position: z.string(),
  serial: z.string(),
};
