import './plain-words.ts';
import type { z } from 'zod';
import type { ProblemType } from './problems.ts';
import type { Role } from './roles.ts';

/** The shop's nouns in the order a unit meets them. A write names the nouns it touches; live views refresh by noun. */
export const nouns = [
  'people',
  'customers',
  'manuals',
  'units',
  'quotes',
  'work-orders',
  'findings',
  'directives',
  'inventory',
  'kits',
  'purchasing',
  'processes',
  'vendors',
  'peening',
  'field-balance',
  'governor-tests',
  'bench',
  'releases',
  'due-dates',
  'reminders',
  'files',
  'imports',
  'records',
  'server',
] as const;
export type Noun = (typeof nouns)[number];

export type Method = 'GET' | 'POST' | 'PUT' | 'DELETE';

/** Who may call: named roles, anyone signed in, or anyone at all. */
export type Access = readonly Role[] | 'signed-in' | 'public';

/**
 * One endpoint, defined once for both sides: path, access, the shape that goes in and the shape that comes out.
 *
 * `input` is one strict object. Keys named in the path (`:lotId`) come from the path; the rest from the query of a read or
 * the JSON body of a command.
 */
export interface Operation<I extends z.ZodObject = z.ZodObject, O extends z.ZodType = z.ZodType> {
  /** Unique, kebab-case, verb first: `receive-lot`. */
  readonly id: string;
  readonly noun: Noun;
  readonly kind: 'read' | 'command';
  readonly method: Method;
  readonly path: `/api/${string}`;
  readonly access: Access;
  readonly summary: string;
  readonly input: I;
  readonly output: O;
  /** Rule-broken problems this operation may answer with, beside those every operation may. */
  readonly problems: readonly ProblemType[];
  /** Nouns whose views this write makes stale. */
  readonly touches: readonly Noun[];
  /** The caller must send the version they saw (If-Match). */
  readonly versioned: boolean;
  /** The meaning of the signature this command takes; the input then carries `signature`. */
  readonly signs?: string;
  /**
   * The meaning of a second person's signature, taken when the input names one: it then carries `supervisorId` and
   * `supervisorSignature`.
   */
  readonly countersigns?: string;
  /** The meaning of a witness's signature: the input then carries `witnessId` and `witnessSignature`, both required. */
  readonly witnessed?: string;
  /**
   * Open also to someone who is signed in but stands before a door: `locked` (the device locked itself) or `due` (an own
   * password or a second factor must be set up first).
   */
  readonly openTo: readonly ('locked' | 'due')[];
  /** Input fields that are never recorded or logged. */
  readonly secret: readonly string[];
  /** Input fields about a person, kept apart from the chain so that they can be erased; the chain holds their salted hash. */
  readonly personal: readonly string[];
  /** A read that answers with a file instead of JSON. */
  readonly produces?: 'application/pdf' | 'text/csv' | 'image/jpeg' | '*/*';
  /** A command whose body is one file as it is, named by these media types; its input is what the path names. */
  readonly takes?: readonly string[];
}

type Given<I extends z.ZodObject, O extends z.ZodType> = Pick<
  Operation<I, O>,
  'id' | 'noun' | 'path' | 'access' | 'summary' | 'input' | 'output'
> &
  Partial<Pick<Operation<I, O>, 'problems' | 'openTo'>>;

/** A read: GET, changes nothing, may be repeated. */
export function read<I extends z.ZodObject, O extends z.ZodType>(
  given: Given<I, O> & Partial<Pick<Operation, 'produces'>>,
): Operation<I, O> {
  return {
    kind: 'read',
    method: 'GET',
    problems: [],
    touches: [],
    versioned: false,
    openTo: [],
    secret: [],
    personal: [],
    ...given,
  };
}

/** A write: one command, one transaction, one record entry. */
export function command<I extends z.ZodObject, O extends z.ZodType>(
  given: Given<I, O> &
    Partial<
      Pick<
        Operation,
        'method' | 'touches' | 'versioned' | 'signs' | 'countersigns' | 'witnessed' | 'secret' | 'personal' | 'takes'
      >
    >,
): Operation<I, O> {
  return {
    kind: 'command',
    method: 'POST',
    problems: [],
    versioned: false,
    openTo: [],
    personal: [],
    ...given,
    touches: [given.noun, ...(given.touches ?? []).filter((noun) => noun !== given.noun)],
    secret: [
      ...(given.secret ?? []),
      ...(given.signs ? ['signature'] : []),
      ...(given.countersigns ? ['supervisorSignature'] : []),
      ...(given.witnessed ? ['witnessSignature'] : []),
    ],
  };
}

export type Input<T> = T extends Operation<infer I, z.ZodType> ? z.output<I> : never;
export type Sent<T> = T extends Operation<infer I, z.ZodType> ? z.input<I> : never;
export type Reply<T> = T extends Operation<z.ZodObject, infer O> ? z.output<O> : never;

/** Names in the path, in order: `/api/inventory/lots/:lotId` → `['lotId']`. */
export function pathKeys(path: string): string[] {
  return [...path.matchAll(/:(\w+)/g)].map((match) => match[1] ?? '');
}
