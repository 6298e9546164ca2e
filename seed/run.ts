import { join } from 'node:path';
import type { Operation, Reply, Sent } from '@hubwright/contracts/operation';
import type { Role } from '@hubwright/contracts/roles';
import { type AppOptions, createApp, type RunningApp } from '../apps/server/src/app.ts';
import { KeptDue } from '../apps/server/src/modules/due-dates/public.ts';
import { type Actor, serverActor } from '../apps/server/src/platform/command/actor.ts';
import { dateIn } from '../apps/server/src/platform/command/clock.ts';
import type { Command } from '../apps/server/src/platform/command/command.ts';
import { Reads } from '../apps/server/src/platform/database/reads.ts';
import { FILES, type FileStore } from '../apps/server/src/platform/files/store.ts';
import { shop } from './data/shop.ts';

const millisecondsOfDay = 86_400_000;

/** Stands where a signature is asked for: seeded people are presigned, so nothing is checked against it. */
export const presigned = { pin: '0000' };

/** A clock that stands still until it is told what time it is. */
class SeedClock {
  private at = 0;
  now(): Date {
    return new Date(this.at);
  }
  /** Never goes back, so that what happened later is also recorded later. */
  set(at: number): void {
    this.at = Math.max(this.at, at);
  }
  /** Each command takes a little while. */
  tick(): void {
    this.at += 7_000;
  }
}

/** Ids of the shape of uuid v7, from the seed's clock and a small generator of its own: the same every time. */
class SeedIds {
  private state = 0x9e3779b9;
  private made = 0;
  constructor(private readonly clock: SeedClock) {}

  next(): string {
    this.made += 1;
    const time = this.clock.now().getTime().toString(16).padStart(12, '0');
    const count = (this.made & 0xfff).toString(16).padStart(3, '0');
    const tail = `${this.random()}${this.random()}`.slice(0, 15);
    return `${time.slice(0, 8)}-${time.slice(8)}-7${count}-8${tail.slice(0, 3)}-${tail.slice(3)}`;
  }

  /** As predictable as the whole invented shop. */
  secret(): string {
    return `${this.random()}${this.random()}${this.random()}${this.random()}`;
  }

  /** Eight hexadecimal digits by xorshift, 32 bits. */
  private random(): string {
    let x = this.state;
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    this.state = x >>> 0;
    return this.state.toString(16).padStart(8, '0');
  }
}

/** Runs commands as people of the invented shop, at invented times, outside HTTP. Signatures are taken as given. */
export class SeedRun {
  private readonly people = new Map<string, Actor>();
  private keys = 0;

  private constructor(
    private readonly running: RunningApp,
    private readonly clock: SeedClock,
    /** The day the shop's present is: everything else is counted from it. */
    readonly today: string,
  ) {}

  /** @param filesFolder where the server that will run on this database keeps its files */
  static async open(databaseUrl: string, today: string, filesFolder: string): Promise<SeedRun> {
    const clock = new SeedClock();
    const options: AppOptions = {
      databaseUrl,
      filesFolder,
      keysFolder: join(filesFolder, '../keys'),
      sessionSecret: 'nobody signs in while the shop is being invented',
      clock,
      ids: new SeedIds(clock),
    };
    return new SeedRun(await createApp(options), clock, today);
  }

  /** What the shop has on record. The seed reads like anyone else and writes by commands alone. */
  get reads(): Reads['models'] {
    return this.running.app.get(Reads).models;
  }

  /** Where the server keeps what it prints. */
  get files(): FileStore {
    return this.running.app.get<FileStore>(FILES);
  }

  /** Comes back when every kept due date is the one of the seed's own day. */
  dueDates(): Promise<void> {
    return this.running.app.get(KeptDue).whole();
  }

  close(): Promise<void> {
    return this.running.close();
  }

  /** A day counted from today. */
  day(offset: number): string {
    return new Date(Date.parse(`${this.today}T00:00:00Z`) + offset * millisecondsOfDay).toISOString().slice(0, 10);
  }

  /** Moves the clock to a day and an hour of the afternoon in UTC, which is the same day in the shop's zone. */
  at(offset: number, hour = 15): void {
    this.clock.set(Date.parse(`${this.day(offset)}T00:00:00Z`) + hour * 3_600_000);
  }

  /** Moves the clock to the beginning of today in the shop’s zone: the first full half hour that has its date. */
  midnight(): void {
    const begins = Date.parse(`${this.today}T00:00:00Z`) - 14 * 3_600_000;
    const halfHours = Array.from({ length: 56 }, (_, index) => begins + index * 1_800_000);
    const first = halfHours.find((at) => dateIn(shop.zone, new Date(at)) === this.today);
    if (first !== undefined) this.clock.set(first);
  }

  /** The instant it is now in the shop. */
  now(): string {
    return this.clock.now().toISOString();
  }

  /** The id of a person the run did not add itself. */
  async personId(signInName: string): Promise<string> {
    const person = await this.reads.person.findUniqueOrThrow({ where: { signInName } });
    return person.id;
  }

  async orderLineId(orderId: string, sequence: number): Promise<string> {
    const line = await this.reads.purchaseOrderLine.findFirstOrThrow({ where: { orderId, sequence } });
    return line.id;
  }

  know(signInName: string, personId: string, roles: readonly Role[]): void {
    this.people.set(signInName, { personId, roles, presigned: true });
  }

  /** Runs a command as a person, by sign-in name; without one, as the server itself. */
  async run<O extends Operation>(
    command: Command<O>,
    input: Sent<O>,
    as: { by?: string; version?: number } = {},
  ): Promise<Reply<O>> {
    const actor = as.by === undefined ? serverActor : this.people.get(as.by);
    if (!actor) throw new Error(`Nobody is called ${as.by}`);
    this.keys += 1;
    this.clock.tick();
    return this.running.runner.run(command, {
      input,
      actor,
      key: `seed-${String(this.keys).padStart(8, '0')}`,
      ...(as.version === undefined ? {} : { expectedVersion: as.version }),
    });
  }
}
