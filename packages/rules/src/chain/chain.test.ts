import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { RuleError } from '../errors/index.ts';
import { append, canonicalJson, type Entry, verify, verifyAgainstAnchor } from './index.ts';

const chainOf = (bodies: unknown[]): Entry[] => {
  const entries: Entry[] = [];
  for (const body of bodies) entries.push(append(entries.at(-1), body));
  return entries;
};

describe('the record chain', () => {
  test('the first entry is sequence 1 after 64 zeros, and its hash is SHA-256 of the canonical text', () => {
    const zeros = '0'.repeat(64);
    // sha256sum (GNU coreutils) of {"body":{"step":"teardown"},"previous":"000…0","sequence":1} without a line end
    const hash = 'ca42ae99e6632a54a0660b2e3805d768b37f668dbcb6a9dcce86ee2c6237fc1a';
    expect(append(undefined, { step: 'teardown' })).toEqual({
      sequence: 1,
      previous: zeros,
      hash,
      body: { step: 'teardown' },
    });
  });

  test('each entry carries the hash of the one before, and a chain is valid whatever JSON it holds', () => {
    fc.assert(
      fc.property(fc.array(fc.jsonValue({ noUnicodeString: false }), { maxLength: 12 }), (bodies) => {
        const entries = chainOf(bodies);
        expect(verify(entries)).toEqual({ valid: true });
        expect(verify(JSON.parse(JSON.stringify(entries)))).toEqual({ valid: true });
      }),
    );
  });

  test('one changed value, one swapped, removed or inserted entry is found at its place', () => {
    const bodies = fc.uniqueArray(fc.integer(), { minLength: 3, maxLength: 10 });
    fc.assert(
      fc.property(bodies, fc.nat(), (values, pick) => {
        const entries = chainOf(values.map((value) => ({ value })));
        const at = pick % (entries.length - 1);
        const changed = entries.map((e, i) => (i === at ? { ...e, body: { value: 'other' } } : e));
        expect(verify(changed)).toMatchObject({ valid: false, at });
        expect(verify(entries.toSpliced(at, 1))).toMatchObject({ valid: false, at });
        const [a, b] = [entries[at] as Entry, entries[at + 1] as Entry];
        expect(verify(entries.toSpliced(at, 2, b, a))).toMatchObject({ valid: false, at });
        expect(verify(entries.toSpliced(at, 0, a))).toMatchObject({ valid: false, at: at + 1 });
      }),
    );
  });

  test('a rewritten entry with a fresh hash is found at the next one', () => {
    const [first, second, third] = chainOf(['a', 'b', 'c']) as [Entry, Entry, Entry];
    expect(verify([first, append(first, 'forged'), third])).toMatchObject({ valid: false, at: 2 });
    expect(verify([first, second, third])).toEqual({ valid: true });
  });

  test('damaged entries are a verdict, not a crash', () => {
    const first = append(undefined, 1);
    for (const damaged of [null, 7, {}, { ...first, sequence: '1' }, { ...first, hash: 'x' }, { ...first, body: NaN }])
      expect(verify([damaged as Entry])).toMatchObject({ valid: false, at: 0 });
    expect(verify([])).toEqual({ valid: true });
    expect(() => verify(undefined as unknown as Entry[])).toThrow(RuleError);
    expect(() => append({ ...first, hash: '' }, 2)).toThrow(expect.objectContaining({ code: 'not-an-entry' }));
  });

  test('a lost tail is valid by itself and found against the anchor', () => {
    const entries = chainOf(['a', 'b', 'c']);
    const { sequence, hash } = entries[2] as Entry;
    expect(verify(entries.slice(0, 2))).toEqual({ valid: true });
    expect(verifyAgainstAnchor(entries.slice(0, 2), { sequence, hash })).toMatchObject({ valid: false, at: 2 });
    expect(verifyAgainstAnchor(entries, { sequence, hash })).toEqual({ valid: true });
    const rewritten = chainOf(['a', 'B', 'c']);
    expect(verifyAgainstAnchor(rewritten, { sequence, hash })).toMatchObject({ valid: false, at: 2 });
    expect(() => verifyAgainstAnchor(entries, { sequence: 0, hash })).toThrow(RuleError);
  });
});

describe('canonical JSON', () => {
  test('the worked example', () => {
    expect(canonicalJson({ b: 1, a: [1.0, 'x'] })).toBe('{"a":[1,"x"],"b":1}');
  });

  test('the text does not depend on the order members were written in, and reads back as the same value', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string({ unit: 'grapheme' }), fc.jsonValue()), (value) => {
        const names = Object.keys(value).reverse();
        // A null prototype keeps a member called __proto__ a member.
        const turned = Object.assign(Object.create(null), Object.fromEntries(names.map((n) => [n, value[n]])));
        expect(canonicalJson(turned)).toBe(canonicalJson(value));
        expect(canonicalJson(JSON.parse(canonicalJson(value)))).toBe(canonicalJson(value));
      }),
    );
  });

  const cyclic: Record<string, unknown> = {};
  cyclic.self = cyclic;
  const refused: [string, unknown, string][] = [
    ['undefined', undefined, 'value'],
    ['an undefined member', { a: { b: undefined } }, 'value.a.b'],
    ['undefined in an array', [1, undefined], 'value[1]'],
    // biome-ignore lint/suspicious/noSparseArray: the hole is the test
    ['a hole in an array', [1, , 2], 'value'],
    ['NaN', { a: NaN }, 'value.a'],
    ['infinity', [-Infinity], 'value[0]'],
    ['a bigint', 1n, 'value'],
    ['a function', { a: () => 1 }, 'value.a'],
    ['a symbol', Symbol('x'), 'value'],
    ['a symbol as name', { [Symbol('x')]: 1 }, 'value'],
    ['a date', { on: new Date(0) }, 'value.on'],
    ['a map', new Map(), 'value'],
    ['a lone high surrogate', '\ud800', 'value'],
    ['a lone low surrogate in a name', { 'a\udc00': 1 }, 'value.a\udc00'],
    ['a circle', cyclic, 'value.self'],
  ];
  test.each(refused)('%s is refused, with the place', (_, value, path) => {
    expect(() => canonicalJson(value)).toThrow(expect.objectContaining({ name: 'RuleError', code: 'not-json', path }));
  });

  test('a value used twice without a circle, minus zero, and a paired surrogate are fine', () => {
    const twice = { x: 1 };
    expect(canonicalJson({ a: twice, b: twice, c: -0, d: '\u{1F600}' })).toBe(
      '{"a":{"x":1},"b":{"x":1},"c":0,"d":"\u{1F600}"}',
    );
  });

  test('endless nesting is refused instead of exhausting the stack', () => {
    let deep: unknown = 1;
    for (let i = 0; i < 50_000; i++) deep = [deep];
    expect(() => canonicalJson(deep)).toThrow(expect.objectContaining({ code: 'not-json' }));
  });
});
