import cookie from '@fastify/cookie';
import session from '@fastify/session';
import connectPgSimple from 'connect-pg-simple';
import type { FastifyInstance } from 'fastify';
import type { Database } from '../database/client.ts';

declare module 'fastify' {
  interface Session {
    personId?: string;
    /** How people name this session; the secret id stays in the cookie and the store. */
    ref?: string;
    seenAt?: number;
    startedAt?: number;
    /** No session outlives this moment, however much it is used. */
    endsAt?: number;
    /** Browser and system in words. */
    device?: string;
    by?: 'password' | 'badge';
    /** When the device locked itself. */
    lockedAt?: number | undefined;
    /** A second factor being set up: its secret and the hashes of its recovery codes, until a code confirms it. */
    pendingFactor?: { sealed: string; recovery: string[]; at: number } | undefined;
  }
}

const twelveHours = 12 * 60 * 60 * 1000;

/** Sessions in PostgreSQL. Reads never write; a used session is prolonged at most once a minute. */
export async function registerSessions(
  fastify: FastifyInstance,
  options: { database: Database; secret: string; secure: boolean },
): Promise<void> {
  // The store wants the session middleware only for its Store base class, which is an event emitter.
  const PgStore = connectPgSimple({ Store: session.MemoryStore } as never);
  const store = new PgStore({
    pool: options.database.pool,
    tableName: 'session',
    disableTouch: true,
    pruneSessionInterval: 15 * 60,
  });
  fastify.addHook('onClose', async () => store.close());
  await fastify.register(cookie);
  await fastify.register(session, {
    secret: options.secret,
    store: store as never,
    // The __Host- prefix needs HTTPS; a plain name only on loopback.
    cookieName: options.secure ? '__Host-hubwright' : 'hubwright',
    cookie: { path: '/', httpOnly: true, sameSite: 'lax', secure: options.secure, maxAge: twelveHours },
    rolling: false,
    saveUninitialized: false,
  });
}
