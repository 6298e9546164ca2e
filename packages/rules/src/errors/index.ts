/**
 * The one error rules throw on bad input. Nothing in rules returns NaN or a silent default.
 *
 * @example new RuleError('not-a-date', 'receivedOn must be YYYY-MM-DD', 'receivedOn')
 */
export class RuleError extends Error {
  override readonly name = 'RuleError' as const;

  /**
   * @param code stable, kebab-case
   * @param message one sentence for a person
   * @param path where in the input, e.g. `points[2].time`
   */
  constructor(
    readonly code: string,
    message: string,
    readonly path: string,
  ) {
    super(message);
  }
}
