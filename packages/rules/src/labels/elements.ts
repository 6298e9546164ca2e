import { RuleError } from '../errors/index.ts';
import {
  associationFaults,
  elementFault,
  hasPredefinedLength,
  identifierAt,
  isCheckedKey,
  ruleLength,
} from './application-identifiers.ts';
import { collect, type Fields, GS } from './shapes.ts';

type Element = { identifier: string; value: string };
/** `damaged`: nothing read from it can be trusted. */
export type Elements = { fields: Fields; problems: string[]; damaged: boolean };

/** GS1 element string: predefined lengths first, so that the fewest separators are needed. */
export function encodeElements(fields: Fields): string {
  const identifiers = Object.keys(fields);
  const faults = identifiers.map((identifier) => [identifier, elementFault(identifier, fields[identifier]!)] as const);
  for (const [identifier, fault] of faults)
    if (fault !== undefined) throw new RuleError('bad-label-field', `${fault}.`, `fields.${identifier}`);
  const [lonely] = associationFaults(identifiers);
  if (lonely !== undefined) throw new RuleError('bad-label', `${lonely}.`, 'fields');
  const order = (identifier: string) => `${hasPredefinedLength(identifier) ? 0 : 1}${identifier}`;
  const sorted = identifiers.toSorted((a, b) => (order(a) < order(b) ? -1 : 1));
  return sorted
    .map((identifier, index) => {
      const last = index === sorted.length - 1;
      return `${identifier}${fields[identifier]}${last || hasPredefinedLength(identifier) ? '' : GS}`;
    })
    .join('');
}

/** Reads a GS1 element string; where a field ends is never guessed. */
export function parseElements(text: string): Elements {
  const elements: Element[] = [];
  let rest = text;
  while (rest !== '') {
    const identifier = identifierAt(rest);
    if (identifier === undefined) return unreadable(`no known application identifier at "${rest}"`);
    const body = rest.slice(identifier.length);
    const end = endOf(identifier, body);
    const value = body.slice(0, end);
    const fault = elementFault(identifier, value);
    if (fault !== undefined) return unreadable(fault);
    elements.push({ identifier, value });
    // A separator after a predefined length is not needed and is tolerated.
    rest = body.slice(body.charAt(end) === GS ? end + 1 : end);
  }
  const { fields, problems } = collect(elements);
  return { fields, problems: [...problems, ...associationFaults(Object.keys(fields))], damaged: false };
}

/** Is this text, read without being told so, certainly GS1? It must start with a checked key or hold a separator, and be clean. */
export function certainlyElements(text: string): Elements | undefined {
  if (!isCheckedKey(identifierAt(text) ?? '') && !text.includes(GS)) return undefined;
  const elements = parseElements(text);
  return elements.damaged || elements.problems.length > 0 ? undefined : elements;
}

function endOf(identifier: string, body: string): number {
  const separator = body.indexOf(GS);
  const next = separator === -1 ? body.length : separator;
  const length = hasPredefinedLength(identifier) ? ruleLength(identifier) : undefined;
  return length === undefined ? next : Math.min(length, next);
}

function unreadable(problem: string): Elements {
  return { fields: {}, problems: [problem], damaged: true };
}
