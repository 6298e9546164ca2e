export { requireSupplier, standingWords } from './approved.ts';
export { orderLock, recordDelivery, undoDelivery } from './deliveries.ts';
export { type DeliveryRow, deliveriesSql, newestDeliveries } from './delivery-rows.ts';
