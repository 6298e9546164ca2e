import rateLimit from '@fastify/rate-limit';
import { Problem } from '@hubwright/contracts/problems';
import { allOperations } from '@hubwright/contracts/routes';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { sendProblem, toProblem } from './problem.filter.ts';
import { Slots } from './slots.ts';

/** Reads that cost much more than a row: whole boards, searches over every noun, papers that are drawn or read from disk. */
const heavyIds = ['find', 'shortages', 'manager-board', 'coming-due', 'price-work', 'revision-differences', 'open-api'];
const heavyPaths = new Set(
  allOperations.filter(({ id, produces }) => produces !== undefined || heavyIds.includes(id)).map(({ path }) => path),
);

/** Of these the ones that keep processor and database at work; pictures are only read from disk. */
const laboriousPaths = new Set(
  allOperations
    .filter(({ id, produces }) => heavyIds.includes(id) || produces === 'application/pdf' || produces === 'text/csv')
    .map(({ path }) => path),
);

/** Where passwords, PINs and codes are tried without being signed in, or to become someone else. */
const doorPaths = new Set(
  allOperations
    .filter(
      ({ path, kind, access }) =>
        kind === 'command' && (access === 'public' || /^\/api\/session\/(unlock|switch)$/.test(path)),
    )
    .map(({ path }) => path),
);

type Limiter = ReturnType<FastifyInstance['createRateLimit']>;

/**
 * Requests a minute, counted in this process. One number sets all: `perMinute` for a person; a whole address, which may be
 * a shop behind one router, gets four times that; sign-in from an address a fiftieth; heavy reads of a person a tenth.
 * Tries at one account's secrets are counted elsewhere, in the database.
 */
export async function registerRateLimits(fastify: FastifyInstance, perMinute: number): Promise<void> {
  await fastify.register(rateLimit, { global: false });
  const limiter = (max: number, keyOf: (request: FastifyRequest) => string): Limiter =>
    fastify.createRateLimit({ max: Math.max(1, Math.floor(max)), timeWindow: '1 minute', keyGenerator: keyOf });
  const address = (request: FastifyRequest) => request.ip;
  const person = (request: FastifyRequest) => request.session?.personId ?? request.ip;
  const everything = limiter(perMinute * 4, address);
  const byPerson = limiter(perMinute, person);
  const atTheDoor = limiter(perMinute / 50, address);
  const heavy = limiter(perMinute / 10, person);
  fastify.addHook('onRequest', async (request, reply) => {
    const path = request.routeOptions.url as `/api/${string}` | undefined;
    const limits = [everything];
    if (request.url.startsWith('/api/')) limits.push(byPerson);
    if (path && request.method === 'POST' && doorPaths.has(path)) limits.push(atTheDoor);
    if (path && request.method !== 'POST' && heavyPaths.has(path)) limits.push(heavy);
    for (const limit of limits) if (await exceeded(limit, request, reply)) return reply;
  });
  limitLabour(fastify, new Slots(24, 8, 'heavy reads are being answered'), person);
}

/** How many costly reads go on at once. Whoever goes away gives the place back too: the answer ends either way. */
function limitLabour(fastify: FastifyInstance, slots: Slots, keyOf: (request: FastifyRequest) => string): void {
  fastify.addHook('onRequest', async (request, reply) => {
    const path = request.routeOptions.url as `/api/${string}` | undefined;
    if (!path || request.method === 'POST' || !laboriousPaths.has(path)) return;
    try {
      reply.raw.once('close', slots.enter(keyOf(request)));
    } catch (error) {
      sendProblem(reply, toProblem(error));
      return reply;
    }
  });
}

async function exceeded(limit: Limiter, request: FastifyRequest, reply: FastifyReply): Promise<boolean> {
  const counted = await limit(request);
  if (counted.isAllowed || !counted.isExceeded) return false;
  sendProblem(reply, new Problem('too-many', 'Slow down a little', { retryAfterSeconds: counted.ttlInSeconds }));
  return true;
}
