import type { Input, Operation, Reply } from '@hubwright/contracts/operation';
import { pathKeys } from '@hubwright/contracts/operation';
import { type Pointed, Problem } from '@hubwright/contracts/problems';
import { Inject, Injectable } from '@nestjs/common';
import type { z } from 'zod';
import { Database, type Tx } from '../database/client.ts';
import { LiveFeed } from '../live/live-feed.ts';
import { type Actor, IDENTITY, type Identity, type Signature } from './actor.ts';
import { CLOCK, type Clock, dateIn } from './clock.ts';
import type { Command, Outcome, SignedContent } from './command.ts';
import { IDS, type Ids } from './ids.ts';
import { takeLocks } from './locks.ts';
import { keepPersonal, withhold } from './personal.ts';
import { claimReceipt, hashOf, type RequestIdentity } from './receipts.ts';
import { writeRecord } from './record.ts';
import { RecordClock } from './record-clock.ts';
import { Refusals } from './refusals.ts';
import { withRetries } from './retry.ts';
import { ShopZone } from './shop-zone.ts';
import { unstorableText } from './storable-text.ts';

/** One request to run a command, as the door hands it in: input unparsed. */
export interface CommandCall {
  readonly input: unknown;
  readonly actor: Actor;
  readonly key: string;
  readonly expectedVersion?: number | undefined;
  /** Do all but commit. */
  readonly dryRun?: boolean;
}

/** A call whose input is parsed and whose signature is checked. */
interface Ready<O extends Operation> extends CommandCall {
  readonly input: Input<O>;
  readonly signedBy: string | undefined;
  /** How the second person signed, where the input names one. */
  readonly countersignedBy: string | undefined;
  readonly zone: string;
}

/** Carries a dry run's reply out of the transaction that it rolls back. */
class DryRun {
  constructor(readonly reply: unknown) {}
}

/** The one write path: receipt, locks, decision, record, outbox, commit, live event. */
@Injectable()
export class CommandRunner {
  constructor(
    @Inject(Database) private readonly database: Database,
    @Inject(IDENTITY) private readonly identity: Identity,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(IDS) private readonly ids: Ids,
    @Inject(Refusals) private readonly refusals: Refusals,
    @Inject(LiveFeed) private readonly live: LiveFeed,
    @Inject(ShopZone) private readonly zone: ShopZone,
    @Inject(RecordClock) private readonly recordClock: RecordClock,
  ) {}

  /** Runs a command once for its key. Throws Problem; nothing else is an expected outcome. */
  async run<O extends Operation>(command: Command<O>, call: CommandCall): Promise<Reply<O>> {
    const { operation } = command;
    const input = parseInput(operation, call.input) as Input<O>;
    try {
      mayCall(operation, call.actor);
      await this.recordClock.check();
      if (operation.versioned && call.expectedVersion === undefined)
        throw new Problem('version-missing', 'Say in If-Match which version you saw');
      const signedBy = operation.signs ? await this.signature(input, call.actor) : undefined;
      const second = secondOf(operation);
      const countersignedBy = second ? await this.countersignature(input, call.actor, second) : undefined;
      // Read before the transaction: inside it would take a second connection.
      const zone = await this.zone.zone();
      const ready = { ...call, input, signedBy, countersignedBy, zone };
      const reply = await withRetries(() => this.transaction(command, ready), input);
      if (!call.dryRun) this.live.poke();
      return reply;
    } catch (error) {
      if (error instanceof Problem && isRefusal(error))
        await this.keepRefusal(operation, call.actor, { input, problem: error });
      throw error;
    }
  }

  private async signature(input: Record<string, unknown>, actor: Actor): Promise<string> {
    if (actor.presigned) return 'presigned';
    return this.identity.checkSignature(actor.personId, input.signature as Signature);
  }

  /** The second person's own password or PIN, checked like any signature; both or neither are given. */
  private async countersignature(
    input: Record<string, unknown>,
    actor: Actor,
    second: Second,
  ): Promise<string | undefined> {
    const personId = input[`${second}Id`] as string | undefined;
    const signature = input[`${second}Signature`] as Signature | undefined;
    if (personId === undefined && signature === undefined) return undefined;
    if (personId === undefined || signature === undefined) throw halfCountersigned(personId);
    if (actor.presigned) return 'presigned';
    try {
      return await this.identity.checkSignature(personId, signature);
    } catch (error) {
      throw error instanceof Problem ? ofSecond(error, second) : error;
    }
  }

  private async transaction<O extends Operation>(command: Command<O>, call: Ready<O>): Promise<Reply<O>> {
    try {
      return await this.database.prisma.$transaction((tx) => this.body(tx, command, call));
    } catch (error) {
      if (error instanceof DryRun) return error.reply as Reply<O>;
      throw error;
    }
  }

  private async body<O extends Operation>(tx: Tx, command: Command<O>, call: Ready<O>): Promise<Reply<O>> {
    const { operation } = command;
    const now = this.clock.now();
    const kept = withoutSecrets(operation, call.input);
    const { personId } = call.actor;
    const request: RequestIdentity = { personId, key: call.key, command: operation.id, inputHash: hashOf(kept) };
    const earlier = await claimReceipt(tx, request, now);
    if (earlier) return earlier.stored as Reply<O>;
    await takeLocks(tx, await command.locks(call.input, tx, call.actor));
    const entryId = this.ids.next();
    const { input, actor, expectedVersion } = call;
    const today = dateIn(call.zone, now);
    const newId = () => this.ids.next();
    const signOffs: SignedContent[] = [];
    const countersigner = call.countersignedBy ? secondPerson(operation, call.input) : undefined;
    const given = { tx, input, actor, now, today, entryId, newId, signOffs, countersigner, expectedVersion };
    const outcome = await command.execute(given);
    const reply = operation.output.parse(outcome.reply) as Reply<O>;
    if (call.dryRun) throw new DryRun(reply);
    const { recorded, values } = withhold(operation, kept, () => this.ids.secret());
    const body = {
      id: entryId,
      at: now.toISOString(),
      input: recorded,
      ...recordOf(operation, { call, signOffs }, outcome),
    };
    await keepPersonal(tx, { entryId, subjects: outcome.subjects }, values);
    await writeRecord(tx, body, { request, reply, touches: operation.touches });
    this.recordClock.wrote(now);
    return reply;
  }

  private async keepRefusal(
    operation: Operation,
    actor: Actor,
    refused: { input: Record<string, unknown>; problem: Problem },
  ): Promise<void> {
    const subject = Object.fromEntries(pathKeys(operation.path).map((key) => [key, String(refused.input[key] ?? '')]));
    await this.refusals.keep({
      personId: actor.personId,
      command: operation.id,
      problem: refused.problem.type,
      detail: refused.problem.detail,
      subject,
    });
  }
}

/** Who signs beside the caller: a trainee's supervisor, or a witness. */
type Second = 'supervisor' | 'witness';

function secondOf({ countersigns, witnessed }: Operation): Second | undefined {
  if (countersigns) return 'supervisor';
  return witnessed ? 'witness' : undefined;
}

function secondPerson(operation: Operation, input: Record<string, unknown>): string | undefined {
  return input[`${secondOf(operation)}Id`] as string | undefined;
}

function halfCountersigned(supervisorId: string | undefined): Problem {
  const [missing, detail] =
    supervisorId === undefined
      ? ['/supervisorId', 'Say who supervised the work']
      : ['/supervisorSignature', 'The supervisor signs with their own password or PIN'];
  return new Problem('invalid-input', detail, {}, [{ pointer: missing, detail }]);
}

/** A refused second signature is said of that person, not of whoever is signed in; their session stays as it is. */
function ofSecond({ type, details, ...problem }: Problem, second: Second): Problem {
  if (type === 'sign-in-locked') return new Problem(type, `Too many wrong passwords of the ${second}`, details);
  if (type === 'pin-locked') return new Problem(type, `The ${second}’s PIN is locked after too many wrong tries`);
  if (!['signature-refused', 'not-signed-in', 'own-password-due'].includes(type))
    return new Problem(type, problem.detail, details);
  const detail =
    type === 'signature-refused' ? `That is not the ${second}’s own password or PIN` : 'This person cannot sign now';
  return new Problem('signature-refused', detail, {}, [{ pointer: `/${second}Signature`, detail }]);
}

/** Parses strictly; every fault comes back with a pointer to the field. */
export function parseInput(operation: Operation, raw: unknown): Record<string, unknown> {
  const parsed = operation.input.safeParse(raw);
  const faults = parsed.success ? unstorableText(parsed.data) : parsed.error.issues.flatMap(pointed);
  if (parsed.success && faults.length === 0) return parsed.data;
  throw new Problem('invalid-input', 'Some fields cannot be used as they are', {}, faults);
}

function pointed(issue: z.core.$ZodIssue): Pointed[] {
  const base = issue.path.map((part) => `/${String(part).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map((key) => ({ pointer: `${base}/${key}`, detail: 'This field is not known here' }));
  return [{ pointer: base, detail: issue.message }];
}

/** Throws `not-permitted` unless the actor holds one of the operation's roles. */
export function mayCall(operation: Operation, actor: Actor): void {
  const { access } = operation;
  if (access === 'public' || access === 'signed-in' || actor.roles.some((role) => access.includes(role))) return;
  throw new Problem('not-permitted', `Only ${access.join(', ')} may do this`, { roles: access });
}

/** Who did what under which authorisation and signature, as the record keeps it. */
function recordOf<O extends Operation>(
  operation: O,
  { call, signOffs }: { call: Ready<O>; signOffs: readonly SignedContent[] },
  outcome: Outcome<O>,
) {
  const { authorisation, reason } = outcome;
  const content = signOffs.length > 0 ? { signOffs } : {};
  const second = call.countersignedBy
    ? {
        countersigned: {
          person: secondPerson(operation, call.input),
          meaning: operation.countersigns ?? operation.witnessed,
          by: call.countersignedBy,
        },
      }
    : {};
  return {
    command: operation.id,
    who: { person: call.actor.personId, roles: call.actor.roles, ...(authorisation ? { authorisation } : {}) },
    ...(operation.signs && call.signedBy
      ? { signed: { meaning: operation.signs, by: call.signedBy, ...second, ...content } }
      : second),
    subjects: outcome.subjects,
    facts: outcome.facts ?? {},
    ...(reason ? { reason } : {}),
  };
}

function isRefusal(problem: Problem): boolean {
  return problem.status === 403 || problem.status === 409;
}

function withoutSecrets(operation: Operation, input: Record<string, unknown>): Record<string, unknown> {
  return JSON.parse(
    JSON.stringify(Object.fromEntries(Object.entries(input).filter(([key]) => !operation.secret.includes(key)))),
  ) as Record<string, unknown>;
}
