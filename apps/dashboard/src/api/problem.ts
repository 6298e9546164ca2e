import { type Pointed, type ProblemType, problems } from '@hubwright/contracts/problems';
import type { z } from 'zod';

/** What went wrong, in the server's words (RFC 9457) or, when the server could not be reached, in ours. */
export interface ProblemFacts {
  readonly type: ProblemType | 'unreachable' | 'unreadable';
  readonly status: number;
  readonly title: string;
  readonly detail: string;
  /** What the person can do next. */
  readonly next: string;
  readonly errors: readonly Pointed[];
  /** Typed extras of the problem, such as `shortLines` or `holders`. */
  readonly details: Readonly<Record<string, unknown>>;
}

/** The one error the typed client throws. */
export class ProblemError extends Error {
  override readonly name = 'ProblemError';
  constructor(readonly facts: ProblemFacts) {
    super(`${facts.type}: ${facts.detail}`);
  }

  get type() {
    return this.facts.type;
  }

  /** The server never answered or was too busy to begin: the same request with the same key may be sent again. */
  get mayRepeat(): boolean {
    return this.facts.type === 'unreachable' || this.facts.status === 503;
  }
}

export function unreachable(): ProblemError {
  return new ProblemError({
    type: 'unreachable',
    status: 0,
    title: 'The shop server does not answer',
    detail: 'The request may or may not have arrived.',
    next: 'Check the network and try again; the same request is never carried out twice.',
    errors: [],
    details: {},
  });
}

/** A problem+json body as a `ProblemError`; anything else the server sent is named by its status. */
export function problemFrom(status: number, body: unknown): ProblemError {
  if (typeof body !== 'object' || body === null || !('type' in body) || typeof body.type !== 'string') {
    return new ProblemError({
      type: 'unreadable',
      status,
      title: 'The answer could not be read',
      detail: `The server answered ${status} without saying why.`,
      next: 'Try again; if it stays, tell whoever looks after this server.',
      errors: [],
      details: {},
    });
  }
  const { type, title, detail, next, errors, status: _, ...details } = body as Record<string, unknown>;
  const name = String(type).replace(/^.*\/problems\//, '') as ProblemType;
  const known: { title: string; next: string } | undefined = problems[name];
  return new ProblemError({
    type: name,
    status,
    title: String(title ?? known?.title ?? 'The server refused'),
    detail: String(detail ?? ''),
    next: String(next ?? known?.next ?? ''),
    errors: Array.isArray(errors) ? (errors as Pointed[]) : [],
    details,
  });
}

/** What a schema found wrong, in the same shape the server would answer: checked here first to save a round trip. */
export function problemFromIssues(error: z.ZodError): ProblemError {
  const encode = (key: PropertyKey) => String(key).replaceAll('~', '~0').replaceAll('/', '~1');
  return problemFrom(422, {
    type: '/problems/invalid-input',
    detail: 'Nothing was sent yet.',
    errors: error.issues.map((issue) => ({
      pointer: issue.path.map((key) => `/${encode(key)}`).join(''),
      detail: issue.message,
    })),
  });
}
