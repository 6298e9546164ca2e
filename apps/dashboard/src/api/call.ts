import type { Operation, Reply, Sent } from '@hubwright/contracts/operation';
import { queryString, splitInput } from './address.ts';
import { problemFrom, unreachable } from './problem.ts';

export interface CallOptions {
  /** Idempotency-Key of a command; new for each new intention. */
  readonly key?: string;
  /** The version the person saw, for versioned commands. */
  readonly version?: number;
  /** Do everything but keep it: what would happen. */
  readonly dryRun?: boolean;
  readonly signal?: AbortSignal;
}

/** A new Idempotency-Key. `crypto.randomUUID` exists only on secure origins, so build it from random values. */
export function newKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x40;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}

function headersOf(op: Operation, options: CallOptions): Record<string, string> {
  const headers: Record<string, string> = { Accept: 'application/json, application/problem+json' };
  if (op.kind === 'command') {
    headers['Content-Type'] = 'application/json';
    headers['Idempotency-Key'] = options.key ?? newKey();
  }
  if (options.version !== undefined) headers['If-Match'] = `"${options.version}"`;
  if (options.dryRun) headers['Hubwright-Dry-Run'] = '1';
  return headers;
}

/** The address, method, headers and body of one call: pure, so that it can be tested without a server. */
export function requestOf(op: Operation, input: Record<string, unknown>, options: CallOptions = {}) {
  const { path, rest } = splitInput(op, input);
  const isRead = op.kind === 'read';
  return {
    address: isRead ? path + queryString(rest) : path,
    init: {
      method: op.method,
      headers: headersOf(op, options),
      credentials: 'same-origin' as const,
      ...(isRead ? {} : { body: JSON.stringify(rest) }),
    },
  };
}

/**
 * Calls one operation of the server.
 *
 * @throws ProblemError with the server's reason, or `unreachable` when no answer came
 */
export async function call<O extends Operation>(op: O, input: Sent<O>, options: CallOptions = {}): Promise<Reply<O>> {
  const { address, init } = requestOf(op, input as Record<string, unknown>, options);
  let response: Response;
  try {
    response = await fetch(address, { ...init, ...(options.signal ? { signal: options.signal } : {}) });
  } catch (error) {
    if (options.signal?.aborted) throw error;
    throw unreachable();
  }
  const body: unknown = await response.json().catch(() => undefined);
  if (!response.ok) throw problemFrom(response.status, body);
  return body as Reply<O>;
}
