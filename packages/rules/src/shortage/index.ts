export { affectedParts } from './affected.ts';
export { type Cover, type CoverLine, cover } from './cover.ts';
export type { Alternate, CoverInput, Demand, Lot, Order, ServingOrder } from './cover-input.ts';
export { type LotCost, type LotMethod, type LotSizes, lotSizes } from './lot-sizes.ts';
export { type LotRule, type NetRequirements, type NetRequirementsInput, netRequirements } from './net-requirements.ts';
export type { Peg } from './part-supply.ts';
