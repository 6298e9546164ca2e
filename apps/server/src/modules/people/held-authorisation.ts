import type { AuthorisationLevel } from '@hubwright/contracts/people/authorisation-levels';
import type { Process } from '@hubwright/contracts/people/operations';

/** An authorisation as it was when it was used; copied into the record and the sign-off. */
export interface HeldAuthorisation {
  readonly id: string;
  readonly process: Process;
  readonly level: AuthorisationLevel;
  readonly validFrom: string;
  readonly expiresOn: string | null;
  [key: string]: unknown;
}
