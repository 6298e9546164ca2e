export { binExists, lotLocks } from './lot.ts';
export { type Move, type MoveContext, type Moved, moveStock } from './move-stock.ts';
export { type Place, scrap } from './place.ts';
export { placeTitle } from './place-title.ts';
export { lotByCode, type StockLot, stockOfParts } from './stock-lots.ts';
