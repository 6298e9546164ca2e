import { fieldReviewOperations } from '@hubwright/contracts/field-balance/review-operations';
import { reviewOperations } from '@hubwright/contracts/work-orders/review-operations';
import { useState } from 'react';
import { z } from 'zod';
import { useMay, useMe } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { DecideFieldReview } from '../../features/field-balance/decide-review.tsx';
import { type FieldReview, FieldReviewTable } from '../../features/field-balance/ReviewTable.tsx';
import { DecideReview } from '../../features/travelers/decide-review.tsx';
import { type Review, ReviewTable } from '../../features/travelers/ReviewTable.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { PagesFrame } from '../../ui/Pages.tsx';
import { Select } from '../../ui/Select.tsx';

const address = z.object({ instrument: z.string().catch(''), show: z.enum(['open', 'all']).catch('open') });
const choices = [
  { value: 'open', text: 'To be decided or measured' },
  { value: 'all', text: 'All' },
] as const;

/** Orders of their own, so a list of their own below the units of the shop. */
function FieldReviews({ instrument, show }: { instrument: string; show: 'open' | 'all' }) {
  const me = useMe();
  const reviews = usePages(fieldReviewOperations.listFieldReviews, {
    show,
    ...(instrument === '' ? {} : { instrumentId: instrument }),
  });
  const mayDecide = useMay(fieldReviewOperations.decideFieldReview);
  const [deciding, setDeciding] = useState<FieldReview>();
  return (
    <div className="sheet">
      <PagesFrame of={reviews}>
        <FieldReviewTable reviews={reviews.rows} onDecide={mayDecide ? setDeciding : undefined} />
      </PagesFrame>
      {deciding ? (
        <DecideFieldReview key={deciding.id} review={deciding} signer={me} onClose={() => setDeciding(undefined)} />
      ) : null}
    </div>
  );
}

export function ReviewsPage() {
  const me = useMe();
  const [{ instrument, show }, setAddress] = useAddress(address);
  const reviews = usePages(reviewOperations.listCalibrationReviews, {
    show,
    ...(instrument === '' ? {} : { instrumentId: instrument }),
  });
  const mayDecide = useMay(reviewOperations.decideCalibrationReview);
  const [deciding, setDeciding] = useState<Review>();
  return (
    <>
      <div className="sheet">
        <PagesFrame of={reviews}>
          <ReviewTable
            reviews={reviews.rows}
            onDecide={mayDecide ? setDeciding : undefined}
            tools={
              <Select
                label="Show"
                value={show}
                onChange={(value) => setAddress({ show: value })}
                choices={choices}
                isRequired
              />
            }
          />
        </PagesFrame>
        {deciding ? (
          <DecideReview key={deciding.id} review={deciding} signer={me} onClose={() => setDeciding(undefined)} />
        ) : null}
      </div>
      <FieldReviews instrument={instrument} show={show} />
    </>
  );
}
