import { createPrivateKey, createPublicKey } from 'node:crypto';
import { describe, expect, test } from '@jest/globals';
import { keyId, signatureHolds, signText } from '../../../apps/server/src/platform/records/shop-key.ts';

// RFC 8032 §7.1, "Test Vectors for Ed25519": secret key, public key, message, signature; all hex. The shop signs texts, so
// the messages that are no UTF-8 (TEST 3, TEST 1024, TEST SHA(abc)) cannot be given to it.
const vectors = [
  {
    name: 'TEST 1',
    secret: '9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60',
    publicKey: 'd75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a',
    message: '',
    signature:
      'e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b',
  },
  {
    name: 'TEST 2',
    secret: '4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb',
    publicKey: '3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c',
    message: '72',
    signature:
      '92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00',
  },
];

/** RFC 8410 §7: a private key in PKCS #8 is this prefix and the 32 bytes. */
const pkcs8Prefix = '302e020100300506032b657004220420';

function keyOf(secret: string) {
  return createPrivateKey({ key: Buffer.from(pkcs8Prefix + secret, 'hex'), format: 'der', type: 'pkcs8' });
}

const base64 = (hex: string) => Buffer.from(hex, 'hex').toString('base64');

/** The same bytes with one bit turned over. */
function flipped(text: string, bit: number): string {
  const bytes = Buffer.from(text, 'base64');
  bytes[bit >> 3] = (bytes[bit >> 3] ?? 0) ^ (1 << (bit & 7));
  return bytes.toString('base64');
}

describe.each(vectors)('the shop’s key, RFC 8032 §7.1 $name', ({ secret, publicKey, message, signature }) => {
  const text = Buffer.from(message, 'hex').toString('utf8');

  test('the public key follows from the secret', () => {
    const spki = createPublicKey(keyOf(secret)).export({ format: 'der', type: 'spki' });
    expect(spki.subarray(-32).toString('hex')).toBe(publicKey);
  });

  test('signs to the published signature', () => {
    expect(signText({ privateKey: keyOf(secret) }, text)).toBe(base64(signature));
  });

  test('and the signature holds', () => {
    expect(signatureHolds(base64(publicKey), text, base64(signature))).toBe(true);
  });

  test('but with any one of its 512 bits turned over it does not', () => {
    const held = Array.from({ length: 512 }, (_, bit) => bit).filter((bit) =>
      signatureHolds(base64(publicKey), text, flipped(base64(signature), bit)),
    );
    expect(held).toEqual([]);
  });

  test('nor by a key with any one of its 256 bits turned over', () => {
    const held = Array.from({ length: 256 }, (_, bit) => bit).filter((bit) =>
      signatureHolds(flipped(base64(publicKey), bit), text, base64(signature)),
    );
    expect(held).toEqual([]);
  });

  test('nor over another text', () => {
    expect(signatureHolds(base64(publicKey), `${text} `, base64(signature))).toBe(false);
    expect(signatureHolds(base64(publicKey), text === '' ? 's' : '', base64(signature))).toBe(false);
  });

  test('what is no signature or no key at all is refused without an error', () => {
    for (const odd of ['', 'AAAA', base64(signature).slice(0, -4), `${base64(signature)}AAAA`, '!!!'])
      expect(signatureHolds(base64(publicKey), text, odd)).toBe(false);
    for (const odd of ['', 'AAAA', '!!!']) expect(signatureHolds(odd, text, base64(signature))).toBe(false);
  });
});

test('a key is named by the first half of the SHA-256 of its 32 bytes', () => {
  // No source: our own name. The hash of TEST 1’s key was computed apart from this program, by sha256sum.
  expect(keyId(base64(vectors[0]?.publicKey ?? ''))).toBe('21fe31dfa154a261626bf854046fd227');
});
