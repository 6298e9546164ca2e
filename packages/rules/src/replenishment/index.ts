export { type Break, type Buy, type BuyInput, buyQuantity } from './buy-quantity.ts';
export {
  type DeliveryMade,
  type DeliveryRecord,
  deliveryRecord,
  enoughDeliveries,
  type LeadTime,
  leadTime,
} from './delivery-record.ts';
export { economicQuantity } from './economic-quantity.ts';
export { type OfferTime, offerHolds, placeOffer } from './offer-times.ts';
export { isUnder, orderSum, priceAt } from './order-sum.ts';
export { type Demand, leadTimeDemand, type Spread, safetyStock, stockLevel } from './stock-level.ts';
export {
  type Asker,
  askers,
  type BuyingCosts,
  type Level,
  type Offer,
  type SuggestInput,
  type Suggestion,
  suggest,
} from './suggest.ts';
