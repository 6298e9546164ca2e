import canonicalize from 'canonicalize';
import { RuleError } from '../errors/index.ts';

/** Deeper than any record; stops a hostile body before it exhausts the stack. */
const DEEPEST = 200;

/**
 * The one text of a JSON value, by RFC 8785: members sorted by UTF-16 code units, no white space, numbers as ECMAScript prints them.
 *
 * What JSON cannot hold is refused rather than dropped or turned into null: undefined, functions, symbols, bigints, NaN, infinities,
 * lone surrogates, holes in arrays, dates, maps, class instances, circular references.
 *
 * Source: RFC 8785 §3.1, §3.2. Errors: RuleError `not-json`, the path naming the member.
 *
 * @example canonicalJson({ b: 1, a: [1.0, 'x'] }) // '{"a":[1,"x"],"b":1}'
 */
export function canonicalJson(value: unknown): string {
  refuseWhatIsNotJson(value, 'value', []);
  return canonicalize(value) as string;
}

function refuseWhatIsNotJson(value: unknown, path: string, parents: readonly object[]): void {
  if (value === null || typeof value === 'boolean') return;
  if (typeof value === 'string') refuseLoneSurrogates(value, path);
  else if (typeof value === 'number') refuseNotFinite(value, path);
  else if (typeof value === 'object') refuseInside(value, path, parents);
  else throw notJson(`a value of type ${typeof value} has no JSON form`, path);
}

function refuseNotFinite(value: number, path: string): void {
  if (!Number.isFinite(value)) throw notJson(`${value} is not a JSON number`, path);
}

function refuseInside(value: object, path: string, parents: readonly object[]): void {
  if (parents.includes(value)) throw notJson('the value contains itself', path);
  if (parents.length >= DEEPEST) throw notJson(`more than ${DEEPEST} levels deep`, path);
  const inside = [...parents, value];
  if (Array.isArray(value)) refuseInArray(value, path, inside);
  else refuseInObject(value, path, inside);
}

function refuseInArray(value: unknown[], path: string, inside: readonly object[]): void {
  // A hole or a named property would vanish or turn into null in the text.
  if (Reflect.ownKeys(value).length !== value.length + 1)
    throw notJson('the array has holes or extra properties', path);
  value.forEach((item, index) => {
    refuseWhatIsNotJson(item, `${path}[${index}]`, inside);
  });
}

function refuseInObject(value: object, path: string, inside: readonly object[]): void {
  const prototype = Object.getPrototypeOf(value);
  // Compared by shape, not by identity: a plain object of another realm (a frame, a test sandbox) is plain too.
  const plain = prototype === null || Object.getPrototypeOf(prototype) === null;
  if (!plain) throw notJson('only plain objects and arrays have a JSON form', path);
  for (const name of Reflect.ownKeys(value)) {
    if (typeof name === 'symbol') throw notJson('a symbol cannot name a member', path);
    const descriptor = Object.getOwnPropertyDescriptor(value, name);
    const inner = `${path}.${name}`;
    if (!descriptor?.enumerable || !('value' in descriptor)) throw notJson('a hidden or computed member', inner);
    refuseLoneSurrogates(name, inner);
    refuseWhatIsNotJson(descriptor.value, inner, inside);
  }
}

/** RFC 8785 §3.2.2.2: a lone surrogate is an error; JSON.stringify would escape it instead. */
function refuseLoneSurrogates(text: string, path: string): void {
  if (/\p{Surrogate}/u.test(text)) throw notJson('the text holds half of a surrogate pair', path);
}

function notJson(reason: string, path: string): RuleError {
  return new RuleError('not-json', `Cannot be put into the record: ${reason}.`, path);
}
