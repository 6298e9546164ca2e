import { describe, expect, test } from '@jest/globals';
import { argon2id } from '@noble/hashes/argon2.js';
import { type Algorithm, hashRaw } from '@node-rs/argon2';
import { hashSecret, secretMatches } from '../../../apps/server/src/modules/people/passwords.ts';

// RFC 9106 §5.3, "Argon2id Test Vectors": 3 passes, 32 KiB, 4 lanes, tag of 32 bytes.
const rfc = {
  password: new Uint8Array(32).fill(1),
  salt: new Uint8Array(16).fill(2),
  secret: new Uint8Array(8).fill(3),
  associated: new Uint8Array(12).fill(4),
  tag: '0d640df58d78766c08c037a34a8b53c9d01ef0452d75b65eb52520e96b01e659',
};
const settings = { t: 3, m: 32, p: 4, dkLen: 32 };
const hex = (bytes: Uint8Array) => Buffer.from(bytes).toString('hex');
const argon2idOf = (password: Uint8Array, secret?: Uint8Array) =>
  hashRaw(password, {
    algorithm: 2 as Algorithm,
    memoryCost: settings.m,
    timeCost: settings.t,
    parallelism: settings.p,
    outputLen: settings.dkLen,
    salt: rfc.salt,
    ...(secret ? { secret } : {}),
  });

describe('Argon2id, RFC 9106 §5.3', () => {
  // The library that keeps passwords takes no associated data, so a second one is held against the vector first.
  test('a reference implementation gives the published tag', () => {
    const tag = argon2id(rfc.password, rfc.salt, { ...settings, key: rfc.secret, personalization: rfc.associated });
    expect(hex(tag)).toBe(rfc.tag);
  });

  test('and the library that keeps passwords agrees with it, with a secret and without', async () => {
    expect(hex(await argon2idOf(rfc.password, rfc.secret))).toBe(
      hex(argon2id(rfc.password, rfc.salt, { ...settings, key: rfc.secret })),
    );
    for (const text of ['', 'password', 'ünïcödé phrase in the workshop', 'x'.repeat(200)]) {
      const password = new TextEncoder().encode(text);
      expect(hex(await argon2idOf(password))).toBe(hex(argon2id(password, rfc.salt, settings)));
    }
  });
});

// OWASP ASVS 5.0 V6.2.8: verified as received, without cutting blanks or changing case.
test('a kept password keeps its case and its blanks, and nothing after a 72nd byte is cut off', async () => {
  const kept = await hashSecret(' Willow Bark in the workshop ');
  for (const other of ['willow bark in the workshop', 'Willow Bark in the workshop', ' WILLOW BARK IN THE WORKSHOP '])
    expect(await secretMatches(kept, other)).toBe(false);
  expect(await secretMatches(await hashSecret(`${'x'.repeat(72)}y`), 'x'.repeat(72))).toBe(false);
});
