import { Problem } from '@hubwright/contracts/problems';
import type { WholeBalance } from './field-balance.ts';

/** What this balance rests on and nobody has decided to let stand. A sheet signed since answers the doubt: its runs begin anew. */
export function doubtsOf(balance: WholeBalance): string[] {
  const signedAt = new Map(balance.signatures.map(({ id, signedAt: at }) => [id, at]));
  const sheet = balance.signatures.find(({ kind }) => kind === 'set-up');
  return balance.reviews
    .filter(({ decision }) => decision === null || decision === 'measure-again')
    .filter(({ fieldSignatureId }) => !sheet || sheet.signedAt <= (signedAt.get(fieldSignatureId) ?? sheet.signedAt))
    .map(
      ({ instrument, decision }) =>
        `${instrument.tag} was found out of tolerance; ${decision ? 'to be read again under a new sheet' : 'nobody decided yet what its readings mean'}`,
    );
}

/** Throws `instrument-in-doubt`. */
export function refuseInDoubt(balance: WholeBalance): void {
  const doubts = doubtsOf(balance);
  if (doubts.length > 0) throw new Problem('instrument-in-doubt', doubts.join('; '), { doubts });
}
