import { Problem } from '@hubwright/contracts/problems';
import { type Algorithm, hash, verify } from '@node-rs/argon2';
import type { ZxcvbnFactory } from '@zxcvbn-ts/core';

// Argon2id with 19 MiB, two passes, one lane: OWASP Password Storage cheat sheet. The enum is const-only in the typings; 2 is Argon2id.
const settings = { algorithm: 2 as Algorithm, memoryCost: 19_456, timeCost: 2, parallelism: 1 };

/** Stored when nobody has the name, so that a wrong name takes as long as a wrong password. */
const nobody = hash('a name that nobody in this shop has', settings);

/** The same word typed on another keyboard is the same password: NFKC before hashing, as SP 800-63B-4 §3.1.1.2 advises. */
function normal(secret: string): string {
  return secret.normalize('NFKC');
}

/** How long a password that somebody else gave may wait to be replaced. Our own choice; SP 800-63B-4 and ASVS 6.4.1 ask for a short time. */
const firstPasswordHours = 72;

/** What a person's row holds once somebody else gave the password: a PIN that came before goes with it. */
export async function givenPassword(password: string, now: Date) {
  const firstPasswordUntil = new Date(now.getTime() + firstPasswordHours * 3_600_000);
  return { passwordHash: await hashSecret(password), pinHash: null, secretsOwn: false, firstPasswordUntil };
}

export function hashSecret(secret: string): Promise<string> {
  return hash(normal(secret), settings);
}

export async function secretMatches(stored: string | null | undefined, secret: string): Promise<boolean> {
  const matches = await verify(stored ?? (await nobody), normal(secret));
  return matches && stored !== null && stored !== undefined;
}

/** Phrases everyone has seen, which no list of leaked passwords holds at this length. From experience, no list. */
const wellKnown = ['correct horse battery staple', 'the quick brown fox', 'to be or not to be', 'let me in please'];

/** What is guessed first: leaked passwords, words, names, dates, rows of keys, repetition. Loaded when somebody chooses: it takes 50 MB. */
let guesser: Promise<ZxcvbnFactory> | undefined;

async function makeGuesser(): Promise<ZxcvbnFactory> {
  const [{ ZxcvbnFactory: Guesser }, common, english] = await Promise.all([
    import('@zxcvbn-ts/core'),
    import('@zxcvbn-ts/language-common'),
    import('@zxcvbn-ts/language-en'),
  ]);
  return new Guesser({
    dictionary: { ...common.dictionary, ...english.dictionary },
    graphs: common.adjacencyGraphs,
  });
}

/** Scores from 0 to 4; 4 is more than 10^10 guesses. Below that somebody who steals the hashes is through within days. */
const strongEnough = 4;

/**
 * Throws `weak-password` for what anyone would try first. Length is the contract's to check; nothing asks for kinds of
 * characters. `context` are names that this password must not hold (SP 800-63B-4 §3.1.1.2).
 */
export async function refuseWeak(password: string, signInName: string, context: readonly string[] = []): Promise<void> {
  const plain = normal(password).toLowerCase();
  const names = [signInName, 'hubwright', ...context];
  if (names.some((word) => holds(plain, word))) throw weak('without your own name, the shop’s or the program’s');
  const dense = plain.replaceAll(/[^\p{L}\p{N}]/gu, '');
  const rest = wellKnown.reduce((text, phrase) => text.replaceAll(phrase.replaceAll(' ', ''), ''), dense);
  if (rest !== dense && rest.length < 6) throw weak('that is not one everyone knows');
  guesser ??= makeGuesser();
  const { score } = (await guesser).check(plain, names);
  if (score < strongEnough) throw weak('that is not a leaked one, one thing repeated, a date or a row of keys');
}

function holds(plain: string, word: string): boolean {
  return word.trim().length > 2 && plain.includes(word.trim().toLowerCase());
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
