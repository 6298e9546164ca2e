import { RuleError } from '../errors/index.ts';

/**
 * How often a stock should suffice: what one piece too few costs over that and what one too many costs. Both in one money unit.
 * Source: the single-period model (e.g. Nahmias, Production and Operations Analysis, chapter 5).
 *
 * @throws RuleError not-a-cost
 * @example criticalRatio({ under: 0.55, over: 0.4 }) // 0.578947…
 */
export function criticalRatio(cost: { under: number; over: number }): number {
  for (const key of ['under', 'over'] as const)
    if (!Number.isFinite(cost[key]) || cost[key] <= 0)
      throw new RuleError('not-a-cost', 'What one piece too few or too many costs is above zero.', `cost.${key}`);
  return cost.under / (cost.under + cost.over);
}
