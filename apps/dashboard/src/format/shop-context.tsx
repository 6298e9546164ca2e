import { createContext, useContext } from 'react';

/** What formatting needs to know about the shop: its zone for instants and dates, its currency for amounts. */
export interface ShopFacts {
  readonly name: string;
  readonly zone: string;
  readonly currency: string;
  readonly units: string;
}

const ShopContext = createContext<ShopFacts | undefined>(undefined);
export const ShopProvider = ShopContext.Provider;

export function useShop(): ShopFacts {
  const shop = useContext(ShopContext);
  if (!shop) throw new Error('useShop is used outside the signed-in part of the dashboard');
  return shop;
}
