import { Problem } from '@hubwright/contracts/problems';
import { type Algorithm, hash, verify } from '@node-rs/argon2';

// Argon2id with 19 MiB, two passes, one lane: OWASP Password Storage cheat sheet. The enum is const-only in the typings; 2 is Argon2id.
const settings = { algorithm: 2 as Algorithm, memoryCost: 19_456, timeCost: 2, parallelism: 1 };

/** Stored when nobody has the name, so that a wrong name takes as long as a wrong password. */
const nobody = hash('a name that nobody in this shop has', settings);

export function hashSecret(secret: string): Promise<string> {
  return hash(secret, settings);
}

export async function secretMatches(stored: string | null | undefined, secret: string): Promise<boolean> {
  const matches = await verify(stored ?? (await nobody), secret);
  return matches && stored !== null && stored !== undefined;
}

/** Throws `weak-password` for what anyone would try first. Length is the contract's to check. */
export function refuseWeak(password: string, signInName: string): void {
  const plain = password.toLowerCase();
  const fewCharacters = new Set(plain).size < 5;
  if (
    fewCharacters ||
    plain.includes(signInName.toLowerCase()) ||
    plain.includes('hubwright') ||
    /^(.{1,6})\1+$/.test(plain)
  ) {
    throw new Problem(
      'weak-password',
      'Choose a phrase without your own name, the program’s name or one thing repeated',
    );
  }
}
