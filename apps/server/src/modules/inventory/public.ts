export { type MaterialUsed, outTimesAt, requireMaterials } from './frozen-lot.ts';
export { binExists } from './lot.ts';
export { type Moved, moveStock } from './move-stock.ts';
export { type Place, scrap } from './place.ts';
export { lotByCode, type StockLot, stockOfParts } from './stock-lots.ts';
