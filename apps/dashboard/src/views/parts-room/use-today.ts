import { dateIn } from '../../format/dates.ts';
import { useShop } from '../../format/shop-context.tsx';

/** Today in the shop's zone. */
export function useToday(): string {
  return dateIn(useShop().zone, new Date());
}
