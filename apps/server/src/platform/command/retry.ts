import { Problem } from '@hubwright/contracts/problems';
import { constraintProblem, isTransient, isUnreachable } from '../database/constraint-problems.ts';

const attempts = 5;

/**
 * Runs one transaction, again when the database says that it lost a race. Gives up as `busy` after five attempts.
 * The body must have no effects outside the transaction. `input` is what it was asked, to name the field that is in the way.
 */
export async function withRetries<T>(body: () => Promise<T>, input: object = {}): Promise<T> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await body();
    } catch (error) {
      if (error instanceof Problem) throw error;
      if (isUnreachable(error)) throw new Problem('busy', 'The database does not answer');
      if (!isTransient(error)) throw constraintProblem(error, input) ?? error;
      if (attempt === attempts) throw new Problem('busy', 'Too many people are changing the same thing');
      await new Promise((resolve) => setTimeout(resolve, Math.random() * 20 * 2 ** attempt));
    }
  }
}
