import type { Role } from '@hubwright/contracts/roles';

/** Who is asking. Everything else about a person is read when it is needed. */
export interface Actor {
  readonly personId: string;
  readonly roles: readonly Role[];
  /** What this person must set up before anything else is open to them. */
  readonly due?: 'own-password' | 'second-factor';
  /** Set where the signature was taken another way: the seed signs through commands without a password hash per signature. */
  readonly presigned?: true;
}

/** The server itself, for what no person asked: first set-up and pruning. */
export const serverActor: Actor = { personId: '00000000-0000-0000-0000-000000000000', roles: [] };

/** A password or PIN given again; `signer` is who the page said would sign. */
export type Signature = ({ readonly password: string } | { readonly pin: string }) & {
  readonly signer?: string | undefined;
};

/** Finds the person behind a session, and checks a signature. The people department provides it. */
export interface Identity {
  /** Undefined when the person is unknown or the account is off. */
  actor(personId: string): Promise<Actor | undefined>;
  /** Throws `signature-refused` unless the secret is this person's own. Answers how it was given. */
  checkSignature(personId: string, signature: Signature): Promise<'password' | 'pin'>;
}
export const IDENTITY = Symbol('Identity');
