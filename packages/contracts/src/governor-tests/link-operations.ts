import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, id, instant } from '../values.ts';

/*
 * How a bench sends readings. The bench (or a small program beside it) listens on a TCP port inside the shop and writes, to whoever
 * connects, one JSON object a line in UTF-8, each line ended by \n and no longer than 1,024 bytes:
 *
 *   {"at":"2026-11-26T10:15:04.200Z","channel":"relief","value":284.6,"unit":"psi"}
 *
 * at: when it was read, ISO 8601 in UTC. channel: 1 to 40 characters. value: a finite number. unit: one of rpm, psi, kPa, qt/min, gal/min,
 * L/min, qt/h, L/h, degF, degC, in, mm, in-lb, N-m, s. Other fields are left alone. Nothing is ever sent to the bench.
 * A line that is none of this is counted and shown, and nothing of it is used. A channel counts with its newest reading: one whose `at`
 * is not newer than the one before is not new. A reading that came more than two seconds ago cannot be taken. Without a line for
 * ten seconds the connection is given up and made anew, after a quarter of a second at first and eight at most. The server is connected only while
 * somebody looks: each request of `live-bench-readings` keeps it for ten seconds.
 */

export const liveChannel = z.object({
  channel: z.string(),
  value: z.number(),
  unit: z.string(),
  at: instant,
  /** Since it came, in milliseconds. */
  age: z.int(),
  fresh: z.boolean(),
});
const live = z
  .object({
    state: z.enum(['not-linked', 'connecting', 'connected', 'waiting']),
    /** Why it is not connected, in words. */
    trouble: z.string().nullable(),
    channels: z.array(liveChannel),
    /** Lines that were no readings since the connection was made, and what was wrong with the last. */
    refused: z.int(),
    lastRefused: z.string().nullable(),
  })
  .meta({ id: 'LiveBench' });

/** The address a bench sends readings from, and what it sends. */
export const benchLinkOperations = {
  benchLink: read({
    id: 'bench-link',
    noun: 'governor-tests',
    path: '/api/instruments/:instrumentId/link',
    access: 'signed-in',
    summary: 'Where a governor bench sends its readings from; host and port are null where it does not',
    input: z.strictObject({ instrumentId: id }),
    output: z
      .object({ id, host: z.string().nullable(), port: z.int().nullable(), version: z.int() })
      .meta({ id: 'BenchLink' }),
  }),
  linkBench: command({
    id: 'link-bench',
    noun: 'governor-tests',
    method: 'PUT',
    path: '/api/instruments/:instrumentId/link',
    access: ['manager', 'administrator'],
    versioned: true,
    summary: 'Say from which address inside the shop a governor bench sends readings',
    input: z.strictObject({
      instrumentId: id,
      host: z.string().trim().min(2).max(45),
      port: z.int().min(1).max(65_535),
    }),
    output: changed,
    problems: ['address-outside', 'instrument-wrong'],
  }),
  unlinkBench: command({
    id: 'unlink-bench',
    noun: 'governor-tests',
    method: 'DELETE',
    path: '/api/instruments/:instrumentId/link',
    access: ['manager', 'administrator'],
    versioned: true,
    summary: 'A governor bench sends no readings any more',
    input: z.strictObject({ instrumentId: id }),
    output: changed,
    problems: ['bench-not-linked'],
  }),
  liveBenchReadings: read({
    id: 'live-bench-readings',
    noun: 'governor-tests',
    path: '/api/instruments/:instrumentId/live',
    access: 'signed-in',
    summary: 'What a bench sends now: the newest reading of each channel, and what is wrong with the connection',
    input: z.strictObject({ instrumentId: id }),
    output: live,
  }),
} as const;
export type LiveChannel = z.output<typeof liveChannel>;
