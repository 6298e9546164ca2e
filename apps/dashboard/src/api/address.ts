import { type Operation, pathKeys, type Sent } from '@hubwright/contracts/operation';

/** One value as text for a path or a query; objects have no place in either. */
function asText(key: string, value: unknown): string {
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return String(value);
  throw new TypeError(`${key} cannot be written in an address`);
}

/** The path of an operation with its `:keys` filled from the input, and the input that is left. */
export function splitInput(op: Operation, input: Record<string, unknown>) {
  const inPath = new Set(pathKeys(op.path));
  const path = op.path.replace(/:(\w+)/g, (_, key: string) => {
    const value = input[key];
    if (value === undefined || value === '') throw new TypeError(`${op.id} needs ${key}`);
    return encodeURIComponent(asText(key, value));
  });
  const rest = Object.fromEntries(
    Object.entries(input).filter(([key, value]) => !inPath.has(key) && value !== undefined),
  );
  return { path, rest };
}

/** A query string with stable order; a list becomes one entry per item, `undefined` is left out. */
export function queryString(rest: Record<string, unknown>): string {
  const query = new URLSearchParams();
  for (const [key, value] of Object.entries(rest)) {
    for (const item of Array.isArray(value) ? value : [value]) {
      if (item !== undefined && item !== null) query.append(key, asText(key, item));
    }
  }
  const text = query.toString();
  return text === '' ? '' : `?${text}`;
}

/** The whole address of a read: for `fetch`, and for links to PDF and CSV files. */
export function addressOf<O extends Operation>(op: O, input: Sent<O>): string {
  const { path, rest } = splitInput(op, input as Record<string, unknown>);
  return path + queryString(rest);
}
