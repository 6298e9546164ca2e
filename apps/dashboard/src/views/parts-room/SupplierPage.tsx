import { approvalOperations } from '@hubwright/contracts/purchasing/approval-operations';
import { offerOperations } from '@hubwright/contracts/purchasing/offer-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { AllowDialog, ApproveDialog } from '../../features/purchasing/approve-supplier.tsx';
import { OfferTable } from '../../features/purchasing/OfferTable.tsx';
import { SupplierApprovals } from '../../features/purchasing/SupplierApprovals.tsx';
import { SupplierRecord } from '../../features/purchasing/SupplierRecord.tsx';
import { LeastOrderDialog } from '../../features/purchasing/set-least-order.tsx';
import { SetOfferDialog } from '../../features/purchasing/set-offer.tsx';
import { type Offer, type Supplier, supplierQuery } from '../../features/purchasing/suppliers.ts';
import { formatPrice } from '../../format/money.ts';
import { useShop } from '../../format/shop-context.tsx';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { Button } from '../../ui/Button.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { StateMark } from '../../ui/StateMark.tsx';

/** What it sells, and on what terms. */
function Offers({ supplier }: { supplier: Supplier }) {
  const offers = usePages(offerOperations.listOffers, { supplierId: supplier.id });
  const maySet = useMay(offerOperations.setOffer);
  const [setting, setSetting] = useState<{ offer?: Offer; isFollowing?: boolean }>();
  return (
    <section className="sheet stack">
      <h2>What it sells</h2>
      <PagesFrame of={offers}>
        <OfferTable
          caption={`Offers of ${supplier.name}`}
          rows={offers.rows}
          tools={maySet ? <Button onPress={() => setSetting({})}>Add an offer</Button> : null}
          onChange={maySet ? (offer) => setSetting({ offer }) : undefined}
          onFollow={maySet ? (offer) => setSetting({ offer, isFollowing: true }) : undefined}
        />
      </PagesFrame>
      {setting ? <SetOfferDialog supplier={supplier} {...setting} onClose={() => setSetting(undefined)} /> : null}
    </section>
  );
}

/** One supplier: may we buy here, on what terms, and how does it keep its word. */
export function SupplierPage() {
  const { supplierId = '' } = useParams({ strict: false }) as { supplierId?: string };
  const supplier = useSuspenseQuery(supplierQuery(supplierId)).data;
  const { currency } = useShop();
  const mayApprove = useMay(approvalOperations.approveSupplier);
  const maySet = useMay(approvalOperations.setLeastOrder);
  const [doing, setDoing] = useState<'approve' | 'allow' | 'least'>();
  const close = () => setDoing(undefined);
  return (
    <>
      <ViewHead
        title={`Supplier ${supplier.name}`}
        question={`May we buy from ${supplier.name}, and how does it deliver?`}
      >
        <div className="row">
          {supplier.mayOrder ? (
            <StateMark state="passed" word="may be ordered from" />
          ) : (
            <StateMark state="stop" word="may not be ordered from" />
          )}
          <span>
            {supplier.phone} {supplier.email}
          </span>
          <span>
            {Number(supplier.leastOrder) > 0
              ? `No order under ${formatPrice(supplier.leastOrder, currency)}`
              : 'Takes any order'}
          </span>
          {maySet ? <Button onPress={() => setDoing('least')}>Least order</Button> : null}
          {mayApprove ? <Button onPress={() => setDoing('approve')}>Approve or end</Button> : null}
          {mayApprove && !supplier.mayOrder ? (
            <Button onPress={() => setDoing('allow')}>Allow by exception</Button>
          ) : null}
        </div>
      </ViewHead>
      <div className="stack">
        <Offers supplier={supplier} />
        <SupplierRecord supplier={supplier} />
        <SupplierApprovals supplier={supplier} />
      </div>
      {doing === 'approve' ? <ApproveDialog supplier={supplier} onClose={close} /> : null}
      {doing === 'allow' ? <AllowDialog supplier={supplier} standing={supplier.standing} onClose={close} /> : null}
      {doing === 'least' ? <LeastOrderDialog supplier={supplier} currency={currency} onClose={close} /> : null}
    </>
  );
}
