export { type MaterialUsed, outTimesAt, requireMaterials } from './frozen-lot.ts';
export { binExists } from './lot.ts';
export { moveMany } from './move-many.ts';
export { type Moved, moveStock } from './move-stock.ts';
export { type Place, quarantine, scrap } from './place.ts';
export { serialsHere } from './serials-here.ts';
export { expiryOnReceipt } from './shelf-life.ts';
export { lotByCode, type StockLot, stockOfParts } from './stock-lots.ts';
export { refuseOwnWitness, writeStockSignature } from './stock-signature.ts';
