import { benchUnit } from '@hubwright/contracts/governor-tests/program';
import { z } from 'zod';

/** What a bench sends in one line; fields beside these are left alone. */
const streamLine = z.object({
  // Written one way, so that instants compare as text.
  at: z.iso.datetime().transform((text) => new Date(text).toISOString()),
  channel: z.string().trim().min(1).max(40),
  value: z.number().min(-1e9).max(1e9),
  unit: benchUnit,
});
export type StreamReading = z.output<typeof streamLine>;

/** A reading, or why the line is none. */
export function readLine(text: string): StreamReading | string {
  let given: unknown;
  try {
    given = JSON.parse(text);
  } catch {
    return 'a line is no JSON';
  }
  const parsed = streamLine.safeParse(given);
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  return `${issue?.path.join('.') || 'a line'} is not as documented`;
}
