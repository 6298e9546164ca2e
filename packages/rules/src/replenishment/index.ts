export { type Break, type Buy, type BuyInput, buyQuantity } from './buy-quantity.ts';
export { economicQuantity } from './economic-quantity.ts';
export { type Demand, leadTimeDemand, type Spread, safetyStock, stockLevel } from './stock-level.ts';
