import { dateIn } from './dates.ts';
import { useShop } from './shop-context.tsx';

/** Today in the shop's zone. */
export function useToday(): string {
  return dateIn(useShop().zone, new Date());
}
