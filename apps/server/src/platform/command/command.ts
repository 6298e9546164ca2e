import type { Input, Operation, Reply } from '@hubwright/contracts/operation';
import type { z } from 'zod';
import type { Tx } from '../database/client.ts';
import type { Actor } from './actor.ts';

/** What a record chain is about: a work order, a lot, a person… */
export interface Subject {
  readonly kind: string;
  readonly id: string;
  readonly before?: number;
  readonly after?: number;
}

/** A sign-off's id, and the SHA-256 of the canonical JSON of what was signed. */
export interface SignedContent {
  readonly id: string;
  readonly contentHash: string;
}

/** All a command body gets. There is no clock, chance or connection but these. */
export interface Context<O extends Operation> {
  readonly tx: Tx;
  readonly input: Input<O>;
  readonly actor: Actor;
  readonly now: Date;
  /** Today in the shop's zone. */
  readonly today: string;
  /** The record entry this run will write; rows that must point at it carry this id. */
  readonly entryId: string;
  newId(): string;
  /** Sign-offs written so far in this run: the record entry names them with the hashes of what was signed. */
  readonly signOffs: SignedContent[];
  /** The second person, where one is named and the operation countersigns: the runner has checked that the secret is theirs. */
  readonly countersigner: string | undefined;
  /** The version the caller saw, for versioned operations. */
  readonly expectedVersion: number | undefined;
}

/** What a command decided. `subjects[0]` is what it is mainly about; each subject's chain gets a link to the one entry. */
export interface Outcome<O extends Operation> {
  readonly reply: Reply<O>;
  readonly subjects: readonly [Subject, ...Subject[]];
  readonly facts?: Readonly<Record<string, unknown>>;
  /** The authorisation used, copied as it was. */
  readonly authorisation?: Readonly<Record<string, unknown>>;
  readonly reason?: string;
}

/** One write: which locks it takes first, and what it does inside the one transaction. */
export interface Command<O extends Operation> {
  readonly operation: O;
  /** Names of what this command decides on, e.g. `lot:<id>`; taken in a fixed order before anything is read. */
  locks(input: Input<O>, tx: Tx, actor: Actor): readonly string[] | Promise<readonly string[]>;
  execute(context: Context<O>): Promise<Outcome<O>>;
}

/** Ties a body to its operation so that input and reply have the operation's types. */
export function defineCommand<I extends z.ZodObject, R extends z.ZodType>(
  operation: Operation<I, R>,
  body: Omit<Command<Operation<I, R>>, 'operation'>,
): Command<Operation<I, R>> {
  return { operation, ...body };
}
