export { orderLock, recordDelivery, undoDelivery } from './deliveries.ts';
