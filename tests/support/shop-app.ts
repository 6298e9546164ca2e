// size: running a command takes its input, who asks and how: four things
import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Operation, Reply, Sent } from '@hubwright/contracts/operation';
import { pathKeys } from '@hubwright/contracts/operation';
import type { Role } from '@hubwright/contracts/roles';
import { type AppOptions, createApp, type RunningApp } from '../../apps/server/src/app.ts';
import type { Actor } from '../../apps/server/src/platform/command/actor.ts';
import type { Command } from '../../apps/server/src/platform/command/command.ts';
import { freshDatabase } from './database.ts';

/** An answer as it came over HTTP. */
export interface Answer<T = Record<string, unknown>> {
  readonly status: number;
  readonly body: T;
  readonly headers: Record<string, string>;
}

export interface CallOptions {
  readonly key?: string;
  readonly version?: number;
  readonly dryRun?: boolean;
  readonly headers?: Record<string, string>;
}

/** One person's browser: keeps the session cookie. */
export class Visitor {
  cookie = '';
  constructor(private readonly shop: ShopApp) {}

  /** Like a browser: each cookie under its name, a newer one in place of the older. */
  private keep(set: readonly string[]): void {
    const named = (pairs: readonly string[]) =>
      pairs.filter(Boolean).map((pair) => [pair.split('=')[0] ?? '', pair] as const);
    this.cookie = [...new Map(named([...this.cookie.split('; '), ...set])).values()].join('; ');
  }

  /** Sends an operation's request through the whole server, over HTTP. */
  async call<O extends Operation>(
    operation: O,
    input: Sent<O>,
    options: CallOptions = {},
  ): Promise<Answer<Reply<O> & Record<string, unknown>>> {
    const given = input as Record<string, unknown>;
    const inPath = new Set(pathKeys(operation.path));
    const path = operation.path.replaceAll(/:(\w+)/g, (_, name: string) => encodeURIComponent(String(given[name])));
    const rest = Object.fromEntries(
      Object.entries(given).filter(([name, value]) => !inPath.has(name) && value !== undefined),
    );
    const query =
      operation.kind === 'read' && Object.keys(rest).length > 0
        ? `?${new URLSearchParams(rest as Record<string, string>)}`
        : '';
    return this.send(
      operation.method,
      path + query,
      operation.kind === 'command' ? { body: rest, ...options } : options,
    ) as never;
  }

  /** A request as raw as the test wants it. */
  async send(
    method: string,
    url: string,
    options: CallOptions & { body?: unknown; payload?: string } = {},
  ): Promise<Answer> {
    const isWrite = method !== 'GET';
    const payload = options.payload ?? (options.body === undefined ? undefined : JSON.stringify(options.body));
    const response = await fetch(this.shop.address + url, {
      method,
      headers: {
        ...(this.cookie ? { cookie: this.cookie } : {}),
        ...(payload === undefined ? {} : { 'content-type': 'application/json' }),
        ...(isWrite ? { 'idempotency-key': options.key ?? randomUUID() } : {}),
        ...(options.version === undefined ? {} : { 'if-match': `"${options.version}"` }),
        ...(options.dryRun ? { 'hubwright-dry-run': '1' } : {}),
        ...options.headers,
      },
      ...(payload === undefined ? {} : { body: payload }),
    });
    const set = response.headers.getSetCookie();
    this.keep(set.map((line) => line.split(';')[0] ?? ''));
    const text = await response.text();
    const isJson = (response.headers.get('content-type') ?? '').includes('json');
    return {
      status: response.status,
      body: (isJson && text ? JSON.parse(text) : { text }) as Record<string, unknown>,
      headers: Object.fromEntries(response.headers),
    };
  }
}

const open = new Set<ShopApp>();
// A spec whose beforeAll failed has nothing to close, but its server still listens; under jest whatever is open goes at the end.
(globalThis as { afterAll?: (close: () => Promise<unknown>) => void }).afterAll?.(() =>
  Promise.all([...open].map((shop) => shop.close())),
);

/** A server on a database of its own. */
export class ShopApp {
  readonly running: RunningApp;
  readonly address: string;
  readonly databaseUrl: string;
  /** Its stored files (`files`) and private keys (`keys`). */
  readonly dataFolder: string;
  private readonly drop: () => Promise<void>;

  private constructor(
    parts: Pick<ShopApp, 'running' | 'address' | 'databaseUrl' | 'dataFolder'> & { drop: () => Promise<void> },
  ) {
    this.running = parts.running;
    this.address = parts.address;
    this.databaseUrl = parts.databaseUrl;
    this.dataFolder = parts.dataFolder;
    this.drop = parts.drop;
  }

  /** @param template which template database to clone: `empty` has only the schema, `shop` the invented shop's reference data */
  static async open(template: 'empty' | 'shop' = 'shop', options: Partial<AppOptions> = {}): Promise<ShopApp> {
    const database = await freshDatabase(template);
    const dataFolder = await mkdtemp(join(tmpdir(), 'hubwright-data-'));
    const drop = async () => {
      await database.drop();
      await rm(dataFolder, { recursive: true, force: true });
    };
    let running: RunningApp | undefined;
    try {
      running = await createApp({
        filesFolder: join(dataFolder, 'files'),
        keysFolder: join(dataFolder, 'keys'),
        databaseUrl: database.url,
        sessionSecret: 'a secret only the tests know, long enough',
        requestsPerMinute: 1_000_000,
        ...options,
      });
      const address = await running.listen(0);
      const shop = new ShopApp({ running, address, databaseUrl: database.url, dataFolder, drop });
      open.add(shop);
      return shop;
    } catch (error) {
      await running?.close();
      await drop();
      throw error;
    }
  }

  /** The same, for a server that something else started and ends. */
  static beside(running: RunningApp, at: Pick<ShopApp, 'address' | 'databaseUrl' | 'dataFolder'>): ShopApp {
    return new ShopApp({ running, ...at, drop: async () => undefined });
  }

  visitor(): Visitor {
    return new Visitor(this);
  }

  /** Runs a command as someone, signatures taken as given: how tests get to the state they are about. */
  async run<O extends Operation>(
    command: Command<O>,
    input: Sent<O>,
    actor: { personId: string; roles: readonly Role[] },
    options: CallOptions = {},
  ): Promise<Reply<O>> {
    const who: Actor = { ...actor, presigned: true };
    return this.running.runner.run(command, {
      input,
      actor: who,
      key: options.key ?? randomUUID(),
      expectedVersion: options.version,
      dryRun: options.dryRun ?? false,
    });
  }

  async close(): Promise<void> {
    if (!open.delete(this)) return;
    await this.running.close();
    await this.drop();
  }
}
