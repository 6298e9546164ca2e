import { reviewOperations } from '@hubwright/contracts/work-orders/review-operations';
import { useState } from 'react';
import { z } from 'zod';
import { useMay, useMe } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
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
  );
}
