import { z } from 'zod';
import { read } from '../operation.ts';

const none = z.strictObject({});

/** What the server says about itself. */
export const serverOperations = {
  live: read({
    id: 'live',
    noun: 'server',
    path: '/api/live',
    access: 'signed-in',
    summary: 'Server-sent events: which nouns changed',
    input: none,
    output: z.any(),
  }),
  alive: read({
    id: 'alive',
    noun: 'server',
    path: '/api/health/live',
    access: 'public',
    summary: 'The process answers',
    input: none,
    output: z.object({ ok: z.literal(true) }),
  }),
  ready: read({
    id: 'ready',
    noun: 'server',
    path: '/api/health/ready',
    access: 'public',
    summary: 'The database answers and its schema is the one this server knows',
    input: none,
    output: z.object({ ok: z.literal(true), schema: z.string(), clock: z.enum(['right', 'behind']) }),
  }),
  openApi: read({
    id: 'open-api',
    noun: 'server',
    path: '/api/openapi.json',
    access: 'public',
    summary: 'This interface as OpenAPI 3.1',
    input: none,
    output: z.record(z.string(), z.unknown()),
  }),
} as const;
