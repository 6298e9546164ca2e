import { append, canonicalJson } from '@hubwright/rules/chain';
import { describe, expect, test } from '@jest/globals';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

const fromBits = (hex: string): number => {
  const view = new DataView(new ArrayBuffer(8));
  view.setBigUint64(0, BigInt(`0x${hex}`));
  return view.getFloat64(0);
};

describe('RFC 8785 (JSON Canonicalization Scheme)', () => {
  // RFC 8785 §3.2.2 sample input; §3.2.3 its canonical text; §3.2.4 its bytes.
  test('the sample of §3.2.2 gives the bytes of §3.2.4', () => {
    const input = String.raw`{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/","literals":[null,true,false]}`;
    const bytes =
      '7b226c69746572616c73223a5b6e756c6c2c747275652c66616c73655d2c226e756d62657273223a5b3333333333333333332e333333333333332c31652b33302c342e352c302e3030322c31652d32375d2c22737472696e67223a22e282ac245c75303030665c6e4127425c225c5c5c5c5c222f227d';
    expect(bytesToHex(utf8ToBytes(canonicalJson(JSON.parse(input))))).toBe(bytes);
  });

  // RFC 8785 §3.2.3, the property sorting sample: UTF-16 code units, so the emoji comes before U+FB33.
  test('members are sorted as in §3.2.3', () => {
    const input = { '\u20ac': 1, '\r': 2, '\ufb33': 3, '1': 4, '\u{1F600}': 5, '\u0080': 6, '\u00f6': 7 };
    expect(canonicalJson(input)).toBe('{"\\r":2,"1":4,"\u0080":6,"\u00f6":7,"\u20ac":1,"\u{1F600}":5,"\ufb33":3}');
  });

  test('names that look like numbers are sorted as text', () => {
    expect(canonicalJson({ '10': 1, '9': 2, '1': 3 })).toBe('{"1":3,"10":1,"9":2}'); // follows from §3.2.3
  });

  // RFC 8785 Appendix B, "Number Serialization Samples": IEEE 754 bits, text.
  test.each([
    ['0000000000000000', '0'],
    ['8000000000000000', '0'],
    ['0000000000000001', '5e-324'],
    ['8000000000000001', '-5e-324'],
    ['7fefffffffffffff', '1.7976931348623157e+308'],
    ['ffefffffffffffff', '-1.7976931348623157e+308'],
    ['4340000000000000', '9007199254740992'],
    ['c340000000000000', '-9007199254740992'],
    ['4430000000000000', '295147905179352830000'],
    ['44b52d02c7e14af5', '9.999999999999997e+22'],
    ['44b52d02c7e14af6', '1e+23'],
    ['44b52d02c7e14af7', '1.0000000000000001e+23'],
    ['444b1ae4d6e2ef4e', '999999999999999700000'],
    ['444b1ae4d6e2ef4f', '999999999999999900000'],
    ['444b1ae4d6e2ef50', '1e+21'],
    ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
    ['3eb0c6f7a0b5ed8d', '0.000001'],
    ['41b3de4355555553', '333333333.3333332'],
    ['41b3de4355555554', '333333333.33333325'],
    ['41b3de4355555555', '333333333.3333333'],
    ['41b3de4355555556', '333333333.3333334'],
    ['41b3de4355555557', '333333333.33333343'],
    ['becbf647612f3696', '-0.0000033333333333333333'],
    ['43143ff3c1cb0959', '1424953923781206.2'],
  ])('the number with bits %s prints as %s', (bits, text) => {
    expect(canonicalJson(fromBits(bits))).toBe(text);
  });

  test.each(['7fffffffffffffff', '7ff0000000000000'])('bits %s are an error (Appendix B)', (bits) => {
    expect(() => canonicalJson(fromBits(bits))).toThrow(expect.objectContaining({ code: 'not-json' }));
  });
});

describe('SHA-256 as the chain uses it', () => {
  // FIPS 180-4 examples (NIST CSRC "Examples with Intermediate Values", SHA-256): one block, two blocks, the empty message.
  test.each([
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
  ])('of "%s"', (message, hash) => {
    expect(bytesToHex(sha256(utf8ToBytes(message)))).toBe(hash);
  });

  test('an entry hashes the canonical text of sequence, previous and body', () => {
    const entry = append(undefined, { b: 1, a: 2 });
    const text = `{"body":{"a":2,"b":1},"previous":"${'0'.repeat(64)}","sequence":1}`;
    expect(entry.hash).toBe(bytesToHex(sha256(utf8ToBytes(text))));
  });
});
