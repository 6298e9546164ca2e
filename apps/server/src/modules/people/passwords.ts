import { Problem } from '@hubwright/contracts/problems';
import { type Algorithm, hash, verify } from '@node-rs/argon2';

// Argon2id with 19 MiB, two passes, one lane: OWASP Password Storage cheat sheet. The enum is const-only in the typings; 2 is Argon2id.
const settings = { algorithm: 2 as Algorithm, memoryCost: 19_456, timeCost: 2, parallelism: 1 };

/** Stored when nobody has the name, so that a wrong name takes as long as a wrong password. */
const nobody = hash('a name that nobody in this shop has', settings);

/** The same word typed on another keyboard is the same password: NFKC before hashing, as SP 800-63B-4 §3.1.1.2 advises. */
function normal(secret: string): string {
  return secret.normalize('NFKC');
}

export function hashSecret(secret: string): Promise<string> {
  return hash(normal(secret), settings);
}

export async function secretMatches(stored: string | null | undefined, secret: string): Promise<boolean> {
  const matches = await verify(stored ?? (await nobody), normal(secret));
  return matches && stored !== null && stored !== undefined;
}

/** What people write when they must fill a length: rows of keys, and phrases everyone has seen. From experience, no list. */
const rows = [
  'abcdefghijklmnopqrstuvwxyz',
  '01234567890123456789',
  'qwertyuiopasdfghjklzxcvbnm',
  '1qaz2wsx3edc4rfv5tgb',
];
const wellKnown = [
  'correct horse battery staple',
  'the quick brown fox',
  'to be or not to be',
  'let me in please',
  'i love you',
  'password',
  'passw0rd',
  'iloveyou',
  'letmein',
];

/** Throws `weak-password` for what anyone would try first. Length is the contract's to check; nothing asks for kinds of characters. */
export function refuseWeak(password: string, signInName: string, context: readonly string[] = []): void {
  const plain = normal(password).toLowerCase();
  const dense = plain.replaceAll(/[^\p{L}\p{N}]/gu, '');
  const few = new Set(plain).size < 5;
  const repeated = /^(.{1,6})\1+$/u.test(plain);
  if (
    few ||
    repeated ||
    withoutRuns(dense).length < dense.length / 4 ||
    [signInName, 'hubwright', ...context].some((word) => holds(plain, word))
  )
    throw weak('without your own name, the shop’s or the program’s, one thing repeated, or a row of keys');
  const rest = wellKnown.reduce((text, phrase) => text.replaceAll(phrase.replaceAll(' ', ''), ''), dense);
  const left = withoutRuns(rest);
  if (rest !== dense && left.length < 6) throw weak('that is not one everyone knows');
}

function holds(plain: string, word: string): boolean {
  return word.trim().length > 2 && plain.includes(word.trim().toLowerCase());
}

/** What is left without pieces of rows of keys, forwards or backwards. */
function withoutRuns(dense: string): string {
  const both = rows.flatMap((row) => [row, [...row].reverse().join('')]);
  return both.reduce((text, row) => cutRuns(text, row), dense);
}

function cutRuns(text: string, row: string): string {
  let kept = '';
  for (let at = 0; at < text.length; ) {
    let length = 0;
    while (at + length < text.length && row.includes(text.slice(at, at + length + 1))) length += 1;
    if (length < 4) kept += text.slice(at, at + 1);
    at += length < 4 ? 1 : length;
  }
  return kept;
}

function weak(than: string): Problem {
  return new Problem('weak-password', `Choose a phrase ${than}`);
}

/** A PIN of one digit repeated, or of digits in a row, is no secret from whoever stands beside. */
export function refuseWeakPin(pin: string): void {
  const isRepeated = new Set(pin).size === 1;
  if (isRepeated || '01234567890'.includes(pin) || '09876543210'.includes(pin))
    throw new Problem('weak-password', 'Choose a PIN that is not one digit repeated or digits in a row', {}, [
      { pointer: '/pin', detail: 'Not one digit repeated, nor digits in a row' },
    ]);
}
