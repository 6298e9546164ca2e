import { RuleError } from '../errors/index.ts';

/** A lot goes out of the freezer or back in, at an instant in milliseconds. */
export interface FreezerMove {
  readonly at: number;
  readonly to: 'out' | 'in';
}

export interface OutTime {
  /** Milliseconds out of the freezer, up to the moment asked about. */
  readonly out: number;
  /** Since when it is out; undefined while it is frozen. */
  readonly since: number | undefined;
  /** The instant at which the limit is used up if it stays out; undefined while it is frozen. */
  readonly runsOutAt: number | undefined;
  readonly isOver: boolean;
}

/**
 * Time out of the freezer, added up over every time a lot was out. It never goes back: freezing again stops the clock and
 * does not turn it. The limit itself is still good. A lot begins frozen.
 *
 * Source: freezer life and accumulated out-time of resin and film are both limits, whichever ends first (common practice, no
 * source); the figures are data of the material's specification. Errors: RuleError `bad-limit` for a limit that is not positive,
 * `bad-log` for moves that do not go forward in time or do not alternate, beginning with out.
 *
 * @example outTimeOf([{ at: 0, to: 'out' }, { at: 3600000, to: 'in' }], { limit: 7200000, at: 9e9 })
 * // { out: 3600000, since: undefined, runsOutAt: undefined, isOver: false }
 */
export function outTimeOf(
  moves: readonly FreezerMove[],
  { limit, at }: { readonly limit: number; readonly at: number },
): OutTime {
  if (!(limit > 0)) throw new RuleError('bad-limit', 'The out-time allowed is more than nothing.', 'limit');
  refuseWrongLog(moves);
  const known = moves.filter((move) => move.at <= at);
  const last = known.at(-1);
  const since = last?.to === 'out' ? last.at : undefined;
  const ended = known.reduce((sum, move, index) => {
    const before = known[index - 1];
    return move.to === 'in' && before ? sum + move.at - before.at : sum;
  }, 0);
  const out = ended + (since === undefined ? 0 : at - since);
  return { out, since, runsOutAt: since === undefined ? undefined : since + limit - ended, isOver: out > limit };
}

function refuseWrongLog(moves: readonly FreezerMove[]): void {
  const wrong = moves.findIndex(
    ({ at, to }, index) =>
      !Number.isFinite(at) ||
      to !== (index % 2 === 0 ? 'out' : 'in') ||
      (index > 0 && at < (moves[index - 1]?.at ?? at)),
  );
  if (wrong >= 0) throw new RuleError('bad-log', 'A lot goes out and comes back in turn.', `moves[${wrong}]`);
}
