import loadHighs from 'highs';
import type { Kit } from '../../packages/rules/src/allocation/index.ts';

/** The same question put to HiGHS, an independent solver of mixed-integer programs (Huangfu & Hall 2018). */
export async function highsAnswer(
  kits: readonly Kit[],
  stock: Readonly<Record<string, number>>,
  seconds?: number,
): Promise<{ value: number; isOptimal: boolean }> {
  // Its types describe the ES module, Node hands out the CommonJS one.
  const highs = await (loadHighs as unknown as typeof loadHighs.default)();
  const parts = Object.keys(stock);
  const name = (kit: number) => `x${kit}`;
  const sum = (terms: string[]) => (terms.length === 0 ? '0 x0' : terms.join(' + '));
  const limits = parts.map((part, row) => {
    const terms = kits.flatMap(({ needs }, kit) => (needs[part] ? [`${needs[part]} ${name(kit)}`] : []));
    return `c${row}: ${sum(terms)} <= ${stock[part]}`;
  });
  const problem = [
    'Maximize',
    `value: ${sum(kits.map(({ value }, kit) => `${value} ${name(kit)}`))}`,
    'Subject To',
    ...limits,
    'Binary',
    ...kits.map((_, kit) => name(kit)),
    'End',
  ].join('\n');
  const exactly = { mip_rel_gap: 0, mip_abs_gap: 0 };
  const options = seconds === undefined ? exactly : { ...exactly, time_limit: seconds };
  const solution = highs.solve(problem, options);
  return { value: solution.ObjectiveValue, isOptimal: solution.Status === 'Optimal' };
}
