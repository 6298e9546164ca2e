import { type Pointed, Problem } from '@hubwright/contracts/problems';

interface DatabaseFault {
  readonly code?: string;
  readonly message?: string;
  readonly meta?: { target?: unknown; driverAdapterError?: { cause?: DatabaseCause } };
  readonly cause?: DatabaseCause;
}
interface DatabaseCause {
  readonly code?: string;
  readonly originalCode?: string;
  readonly originalMessage?: string;
  readonly message?: string;
  readonly constraint?: { index?: string };
  readonly table?: string;
}

/** SQLSTATE of a database error, wherever the adapter put it. */
export function sqlState(error: unknown): string | undefined {
  const fault = error as DatabaseFault | undefined;
  const cause = fault?.meta?.driverAdapterError?.cause ?? fault?.cause;
  const code = cause?.originalCode ?? cause?.code ?? fault?.code;
  return typeof code === 'string' && /^[0-9A-Z]{5}$/.test(code) ? code : undefined;
}

/** Whether the same transaction may succeed when run again: serialization failure or deadlock, during a statement or at commit. */
export function isTransient(error: unknown): boolean {
  const state = sqlState(error);
  return (error as DatabaseFault | undefined)?.code === 'P2034' || state === '40001' || state === '40P01';
}

const unreachableCodes = new Set([
  'P2024',
  'P2028',
  'P1001',
  'P1017',
  'ECONNREFUSED',
  'ECONNRESET',
  '57P01',
  '57P02',
  '57P03',
]);

/**
 * No connection in time, or the connection went away. Whether something was committed is not known then; the key makes
 * asking again safe.
 */
export function isUnreachable(error: unknown): boolean {
  const { code, message } = (error ?? {}) as DatabaseFault;
  if (unreachableCodes.has(code ?? '') || unreachableCodes.has(sqlState(error) ?? '')) return true;
  return /Connection terminated|timeout exceeded when trying to connect|Can't reach database/.test(message ?? '');
}

/**
 * Fields of the input that were already taken. The database tells the broken index, which is named after its table and
 * columns: `aircraft_registration_key` is about `registration`.
 */
function takenFields(fault: DatabaseFault | undefined, input: object): Pointed[] {
  const cause = fault?.meta?.driverAdapterError?.cause ?? fault?.cause;
  const index = (cause?.constraint?.index ?? '').replace(`${cause?.table ?? ''}_`, '_');
  return Object.keys(input)
    .filter((field) => !field.endsWith('Id') && index.includes(`_${columnOf(field)}_`))
    .map((field) => ({ pointer: `/${field}`, detail: 'This is taken already' }));
}

function columnOf(field: string): string {
  return field.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}

/**
 * The problem behind a broken constraint, or undefined when the error is something else. Constraints have sentences for
 * names, so the name is what the person reads; the failing row's values never leave the server.
 *
 * @param input what was asked for, to point at the field that is taken
 */
export function constraintProblem(error: unknown, input: object = {}): Problem | undefined {
  const state = sqlState(error);
  const fault = error as DatabaseFault | undefined;
  const text =
    fault?.meta?.driverAdapterError?.cause?.originalMessage ?? fault?.cause?.originalMessage ?? fault?.message ?? '';
  if (fault?.code === 'P2002' || state === '23505')
    return new Problem(
      'already-exists',
      'There is already one with the same number, name or serial',
      {},
      takenFields(fault, input),
    );
  if (fault?.code === 'P2003' || state === '23503')
    return new Problem('not-found', 'Something this refers to does not exist');
  if (state === '23514') {
    const name = /constraint "([^"]+)"/.exec(text)?.[1];
    return new Problem('would-break-rule', name ?? 'The database refused a value that cannot be', {});
  }
  // Data exceptions (SQLSTATE class 22): a place in a list that is none, a day beyond the calendar, a number too large.
  if (state?.startsWith('22')) return new Problem('invalid-input', 'A value has a form or a size that cannot be used');
  return undefined;
}
