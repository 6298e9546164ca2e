import { newPassword } from '@hubwright/contracts/people/secrets';
import { describe, expect, it } from '@jest/globals';
import { type Algorithm, hashRaw, verify } from '@node-rs/argon2';
import {
  hashSecret,
  refuseWeak,
  refuseWeakPin,
  secretMatches,
} from '../../../apps/server/src/modules/people/passwords.ts';

const argon2id = 2 as Algorithm;

describe('Argon2id', () => {
  // Test vectors of the reference implementation of Argon2 (P-H-C, src/test.c), version 0x13, from memory of that file.
  // The vector of RFC 9106 §5.3 takes associated data, which the library in use cannot be given.
  it.each([
    [2, 16, 1, 'password', 'somesalt', '09316115d5cf24ed5a15a31a3ba326e5cf32edc24702987c02b6566f61913cf7'],
    [2, 8, 1, 'password', 'somesalt', '9dfeb910e80bad0311fee20f9c0e2b12c17987b4cac90c2ef54d5b3021c68bfe'],
    [2, 8, 2, 'password', 'somesalt', '6d093c501fd5999645e0ea3bf620d7b8be7fd2db59c20d9fff9539da2bf57037'],
    [1, 16, 1, 'password', 'somesalt', 'f6a5adc1ba723dddef9b5ac1d464e180fcd9dffc9d1cbf76cca2fed795d9ca98'],
    [4, 16, 1, 'password', 'somesalt', '9025d48e68ef7395cca9079da4c4ec3affb3c8911fe4f86d1a2520856f63172c'],
    [2, 16, 1, 'differentpassword', 'somesalt', '0b84d652cf6b0c4beaef0dfe278ba6a80df6696281d7e0d2891b817d8c458fde'],
    [2, 16, 1, 'password', 'diffsalt', 'bdf32b05ccc42eb15d58fd19b1f856b113da1e9a5874fdcc544308565aa8141c'],
  ])('with t=%d, m=2^%d, p=%d gives the published hash', async (timeCost, power, parallelism, password, salt, hex) => {
    const options = { algorithm: argon2id, timeCost, memoryCost: 2 ** power, parallelism, salt: Buffer.from(salt) };
    expect((await hashRaw(password, options)).toString('hex')).toBe(hex);
  });

  it('reads the PHC string of the reference implementation', async () => {
    const stored = '$argon2id$v=19$m=65536,t=2,p=1$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHAph8ArZWb2GRPPc';
    expect(await verify(stored, 'password')).toBe(true);
    expect(await verify(stored, 'passwore')).toBe(false);
  });

  it('is kept with its settings, at least those of the OWASP Password Storage cheat sheet (19 MiB, two passes, one lane)', async () => {
    expect(await hashSecret('any secret of a person')).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$[\w+/]{22,}\$/);
  });
});

// NIST SP 800-63B-4 §3.1.1.2, password verifiers; from summaries of the final text of 2025.
describe('passwords by SP 800-63B-4', () => {
  const accepted = (text: string) => newPassword.safeParse(text).success;

  it('alone need at least 15 characters', () => {
    expect(accepted('fourteen chars')).toBe(false);
    expect(accepted('fifteen chars!!')).toBe(true);
  });

  it('may have 64 characters and more', () => {
    expect(accepted('long words of a windy morning, '.repeat(3))).toBe(true);
  });

  it('may hold spaces, every printing ASCII character and Unicode, each code point counting one', () => {
    expect(accepted(' !"#$%&\'()*+,-./:;<=>?@[\\]^_`{|}~')).toBe(true);
    expect(accepted('пропеллер и винт')).toBe(true);
    expect(accepted('🛩️🔧🪛'.normalize('NFKC'))).toBe(false);
    expect(accepted('𝛂𝛃𝛄𝛅𝛆𝛇𝛈')).toBe(false);
    expect(accepted('🔩'.repeat(14))).toBe(false);
    expect(accepted('🔩'.repeat(15))).toBe(true);
  });

  it.each(['heron on the weir tonight', '7301948265510384', 'HERON ON THE WEIR TONIGHT', 'пропеллер и винт'])(
    'need no mixture of kinds of characters: %s',
    (text) => expect(refuseWeak(text, 'someone')).resolves.toBeUndefined(),
  );

  it('typed composed or decomposed are the same (NFKC before hashing)', async () => {
    const stored = await hashSecret('caf\u00e9 au lait at noon');
    expect(await secretMatches(stored, 'cafe\u0301 au lait at noon')).toBe(true);
    expect(await secretMatches(stored, 'cafe au lait at noon')).toBe(false);
  });

  it('are compared whole: no end is cut off', async () => {
    const long = `${'x'.repeat(90)} and an end`;
    const stored = await hashSecret(long);
    expect(await secretMatches(stored, long.slice(0, -1))).toBe(false);
    expect(await secretMatches(stored, ` ${long}`)).toBe(false);
  });

  it.each([
    ['one thing repeated', 'abcabcabcabcabcabc'],
    ['few characters', 'aaaaaaaabbbbbbbb'],
    ['digits in a row', '1234567890123456'],
    ['letters in a row', 'abcdefghijklmnop'],
    ['a row of keys', 'qwertyuiopasdfgh'],
    ['a row of keys backwards', 'poiuytrewqlkjhgf'],
    ['a phrase everyone knows', 'correct horse battery staple'],
    ['the word itself, dressed up', 'password1234567'],
    ['the word itself, dressed up in signs', 'P@ssw0rdP@ssw0rd!'],
    ['a leaked one, turned round', 'drowssap1drowssap'],
    ['columns of the keyboard', 'qazwsxedcrfvtgbyhn'],
    ['a season and a year', 'Summer2026Summer'],
    ['one’s own sign-in name', 'i am someone here'],
    ['the program’s name', 'my hubwright login'],
    ['the shop’s name', 'tansy hollow 2026!'],
  ])('are refused with the reason when they are %s', (_, text) =>
    expect(refuseWeak(text, 'someone', ['Tansy Hollow'])).rejects.toThrow(/Choose a phrase/),
  );

  it('of the bench, PINs, are not digits in a row or one repeated', () => {
    for (const pin of ['1111', '1234', '6789', '7890', '4321', '0987']) expect(() => refuseWeakPin(pin)).toThrow();
    for (const pin of ['2468', '1357', '0412']) expect(() => refuseWeakPin(pin)).not.toThrow();
  });
});
