import { offerOperations } from '@hubwright/contracts/purchasing/offer-operations';
import { supplierOperations } from '@hubwright/contracts/purchasing/supplier-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { AddSupplierDialog } from '../../features/purchasing/add-supplier.tsx';
import { CostFacts, CostsDialog } from '../../features/purchasing/buying-costs.tsx';
import { SupplierTable } from '../../features/purchasing/SupplierTable.tsx';
import { buyingCostsQuery } from '../../features/purchasing/suppliers.ts';
import { useShop } from '../../format/shop-context.tsx';
import { useToday } from '../../format/use-today.ts';
import { Button } from '../../ui/Button.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';

/** What suggestions reckon with, for the whole shop. */
function BuyingCosts() {
  const costs = useQuery(buyingCostsQuery).data;
  const { currency } = useShop();
  const mayChange = useMay(offerOperations.setBuyingCosts);
  const [isChanging, setChanging] = useState(false);
  if (!costs) return null;
  return (
    <section className="sheet stack">
      <h2>What buying reckons with</h2>
      <CostFacts costs={costs} currency={currency} />
      {costs.version === 0 ? <p className="soft">Usual figures: a manager should state the shop’s own.</p> : null}
      {mayChange ? (
        <div className="row">
          <Button onPress={() => setChanging(true)}>Change</Button>
        </div>
      ) : null}
      {isChanging ? <CostsDialog costs={costs} onClose={() => setChanging(false)} /> : null}
    </section>
  );
}

export function SuppliersPage() {
  const suppliers = usePages(supplierOperations.listSuppliers, {});
  const today = useToday();
  const mayAdd = useMay(supplierOperations.addSupplier);
  const [isAdding, setAdding] = useState(false);
  return (
    <div className="stack">
      <div className="sheet">
        <PagesFrame of={suppliers}>
          <SupplierTable
            rows={suppliers.rows}
            today={today}
            tools={mayAdd ? <Button onPress={() => setAdding(true)}>Add a supplier</Button> : null}
          />
        </PagesFrame>
      </div>
      <BuyingCosts />
      {isAdding ? <AddSupplierDialog onClose={() => setAdding(false)} /> : null}
    </div>
  );
}
