import { peopleOperations } from '@hubwright/contracts/people/operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useMay } from '../../api/me.ts';
import { ChangeShopForm, shopQuery } from '../../features/people/change-shop.tsx';
import { ShopFacts } from '../../features/people/ShopFacts.tsx';
import { NewerVersion, useSeen } from '../../ui/seen-version.tsx';

export function ShopProfilePage() {
  const { seen, isNewer, takeNewest } = useSeen(useSuspenseQuery(shopQuery).data);
  const mayChange = useMay(peopleOperations.changeShop);
  if (!mayChange) {
    return (
      <div className="sheet">
        <ShopFacts shop={seen} />
      </div>
    );
  }
  return (
    <div className="sheet stack">
      {isNewer ? <NewerVersion onTake={takeNewest} /> : null}
      <ChangeShopForm key={seen.version} shop={seen} onChanged={takeNewest} />
    </div>
  );
}
