import { RuleError } from '../errors/index.ts';

/**
 * Pieces to order at once where ordering costs something and so does keeping: √(2 · a year's pieces · cost of an order / keeping one piece a
 * year). Not rounded.
 * Source: Harris, Factory, The Magazine of Management 10 (1913) 135–136.
 *
 * @throws RuleError not-a-cost, not-a-quantity
 * @example economicQuantity({ yearly: 1000, perOrder: 10, keeping: 0.5 }) // 200
 */
export function economicQuantity(input: { yearly: number; perOrder: number; keeping: number }): number {
  const { yearly, perOrder, keeping } = input;
  if (!Number.isFinite(yearly) || yearly < 0)
    throw new RuleError('not-a-quantity', 'A year’s pieces are a number, zero or more.', 'yearly');
  if (!Number.isFinite(perOrder) || perOrder < 0)
    throw new RuleError('not-a-cost', 'What an order costs is zero or more.', 'perOrder');
  if (!Number.isFinite(keeping) || keeping <= 0)
    throw new RuleError('not-a-cost', 'What keeping a piece for a year costs is above zero.', 'keeping');
  return Math.sqrt((2 * yearly * perOrder) / keeping);
}
