import 'reflect-metadata';
import fastifyStatic from '@fastify/static';
import type { LogLevel } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import { FastifyAdapter, type NestFastifyApplication } from '@nestjs/platform-fastify';
import type { FastifyInstance, FastifyReply } from 'fastify';
import { AppModule, type Surroundings } from './app.module.ts';
import type { BackupSchedule } from './platform/backup/backups.ts';
import { type Clock, systemClock } from './platform/command/clock.ts';
import { type Ids, systemIds } from './platform/command/ids.ts';
import { CommandRunner } from './platform/command/runner.ts';
import { Database } from './platform/database/client.ts';
import { type FileStore, FolderFileStore } from './platform/files/store.ts';
import { nothingAt } from './platform/http/addresses.ts';
import { registerHeaders } from './platform/http/headers.ts';
import { sendProblem, toProblem } from './platform/http/problem.filter.ts';
import { registerRateLimits } from './platform/http/rate-limits.ts';
import { registerSessions } from './platform/http/session.ts';
import { Mailer } from './platform/mail/mailer.ts';
import { KeyFolder } from './platform/records/shop-key.ts';

/** How to build one server. */
export interface AppOptions {
  readonly databaseUrl: string;
  /** At least 32 characters; signs session cookies. */
  readonly sessionSecret: string;
  /** Folder of stored files, kept as long as the database. */
  readonly filesFolder: string;
  /** Folder of the shop's private keys, closed to every other account. */
  readonly keysFolder: string;
  /** Scheduled backups; none without it. */
  readonly backups?: BackupSchedule;
  /** True behind HTTPS: `__Host-` cookies and HSTS. */
  readonly secure?: boolean;
  /** Folder of the built dashboard; without it only the API is served. */
  readonly dashboardFolder?: string;
  readonly clock?: Clock;
  readonly ids?: Ids;
  /** Start although the newest record entry lies ahead of the clock: it ran ahead once and was set right. */
  readonly clockSetBack?: boolean;
  readonly logLevels?: LogLevel[];
  /** Requests a minute for one person or address. */
  readonly requestsPerMinute?: number;
  /** The mail server letters go through; without one they are only printed. */
  readonly smtpUrl?: string;
}

export interface RunningApp {
  readonly app: NestFastifyApplication;
  readonly runner: CommandRunner;
  readonly files: FileStore;
  listen(port: number, host?: string): Promise<string>;
  close(): Promise<void>;
}

/** Builds a server that is not listening yet; close() also closes its database connections. */
export async function createApp(options: AppOptions): Promise<RunningApp> {
  const database = new Database(options.databaseUrl);
  try {
    return await build(options, database);
  } catch (error) {
    await database.close();
    throw error;
  }
}

async function build(options: AppOptions, database: Database): Promise<RunningApp> {
  const secure = options.secure ?? false;
  const adapter = adapterFor(secure);
  const fastify = adapter.getInstance() as unknown as FastifyInstance;
  // A form of another site can send text/plain without asking first: nothing here is ever read from it.
  fastify.removeContentTypeParser('text/plain');
  await registerSessions(fastify, { database, secret: options.sessionSecret, secure });
  await registerHeaders(fastify, { secure });
  await registerRateLimits(fastify, options.requestsPerMinute ?? 3_000);
  takeFilesAsStreams(fastify);
  const files = new FolderFileStore(options.filesFolder);
  const module = AppModule.with(surroundingsOf(options, { database, files }));
  const app = await NestFactory.create<NestFastifyApplication>(module, adapter, {
    logger: options.logLevels ?? ['error', 'warn'],
    abortOnError: false,
    // Fastify's own parser: JSON only, anything else is 415.
    bodyParser: false,
  });
  if (options.dashboardFolder) await serveDashboard(fastify, options.dashboardFolder);
  await begin(app, fastify);
  return {
    app,
    runner: app.get(CommandRunner),
    files,
    async listen(port, host = '127.0.0.1') {
      await app.listen(port, host);
      return app.getUrl();
    },
    async close() {
      await app.close();
      app.get(Mailer).close();
      await database.close();
    },
  };
}

function surroundingsOf(options: AppOptions, own: Pick<Surroundings, 'database' | 'files'>): Surroundings {
  const { clock = systemClock, ids = systemIds, clockSetBack = false } = options;
  const keys = new KeyFolder(options.keysFolder);
  return { ...own, clock, ids, keys, schedule: scheduleOf(options), clockSetBack, mailer: new Mailer(options.smtpUrl) };
}

function adapterFor(secure: boolean): FastifyAdapter {
  return new FastifyAdapter({
    bodyLimit: 1_048_576,
    trustProxy: secure ? 'loopback, linklocal, uniquelocal' : false,
    forceCloseConnections: true,
    // What the router refuses before any hook runs, such as a broken escape in the address.
    frameworkErrors: (error: unknown, _request: unknown, reply: FastifyReply) => sendProblem(reply, toProblem(error)),
  });
}

function scheduleOf({ backups, filesFolder, keysFolder }: AppOptions): Surroundings['schedule'] {
  return backups && backups.everyHours > 0 ? { ...backups, filesFolder, keysFolder } : undefined;
}

/** What has started when something fails, such as the live feed, stops again. */
async function begin(app: NestFastifyApplication, fastify: FastifyInstance): Promise<void> {
  app.enableShutdownHooks([]);
  try {
    await app.init();
    await fastify.ready();
  } catch (error) {
    await app.close();
    throw error;
  }
}

/** A file's body reaches the one command that takes it unread; every other operation refuses it as not JSON. */
function takeFilesAsStreams(fastify: FastifyInstance): void {
  fastify.addContentTypeParser(
    /^(image\/[\w.+-]+|text\/csv|application\/(pdf|octet-stream|vnd\.openxmlformats-officedocument\.spreadsheetml\.sheet))$/,
    (_request, body, done) => done(null, body),
  );
}

/**
 * The built dashboard. Files under /assets carry a hash in their name and are kept by browsers for good; the few others are
 * asked for again each time. Any address that is neither a file nor the API's is a page of the dashboard.
 */
async function serveDashboard(fastify: FastifyInstance, root: string): Promise<void> {
  await fastify.register(fastifyStatic, {
    root: `${root}/assets`,
    prefix: '/assets/',
    index: false,
    immutable: true,
    maxAge: '365d',
  });
  await fastify.register(fastifyStatic, {
    root,
    prefix: '/',
    wildcard: false,
    globIgnore: ['assets/**', 'index.html'],
    index: false,
    cacheControl: false,
    decorateReply: false,
    setHeaders: (reply) => reply.setHeader('cache-control', 'no-cache'),
  });
  fastify.get('/*', (request, reply) => {
    if (request.url.startsWith('/api/')) return sendProblem(reply, nothingAt(request.url));
    return reply
      .header('cache-control', 'no-cache')
      .type('text/html')
      .sendFile('index.html', root, { cacheControl: false });
  });
}
