export const GS = '\u001d';
export const RS = '\u001e';
export const EOT = '\u0004';

export type Format = '15434-06' | 'gs1';
export type Fields = Record<string, string>;

export type Scan = {
  format: Format | 'single' | 'unknown';
  fields: Fields;
  /** What was wrong, left out or tolerated, as sentences to show beside the fields. Empty for a clean scan. */
  problems: string[];
};

/** Adds a field; the same identifier with two values is trusted for neither. */
export function collect(found: { identifier: string; value: string }[]): { fields: Fields; problems: string[] } {
  const values = new Map<string, Set<string>>();
  for (const { identifier, value } of found) values.set(identifier, (values.get(identifier) ?? new Set()).add(value));
  const fields: Fields = {};
  const problems: string[] = [];
  for (const [identifier, set] of values) {
    const [value, ...others] = [...set];
    if (others.length === 0) fields[identifier] = value as string;
    else problems.push(`${identifier} is there more than once: ${[...set].join(', ')}`);
  }
  return { fields, problems };
}
