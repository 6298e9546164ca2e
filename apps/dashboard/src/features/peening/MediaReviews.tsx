import { mediaOperations } from '@hubwright/contracts/peening/media-operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Link } from '../../ui/Link.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { DecideMediaReview } from './decide-media-review.tsx';
import type { MediaReview } from './peening.ts';

/** Parts peened since the last good check of media that then failed one, unit by unit, each to be answered. */
export function MediaReviews({ reviews, signer }: { reviews: readonly MediaReview[]; signer: Signer }) {
  const mayDecide = useMay(mediaOperations.decideMediaReview);
  const [deciding, setDeciding] = useState<MediaReview>();
  if (reviews.length === 0) return null;
  return (
    <section className="stack tight" aria-label="In doubt">
      <h2>In doubt since a media check failed</h2>
      <ul className="lines">
        {reviews.map((review) => (
          <li key={review.id}>
            <span>
              <strong className="code">{review.lot.number}</strong> begun <InstantText instant={review.lot.startedAt} />
              , {review.workOrder.number}, {review.unit.designation} {review.unit.serial}, {review.customer}:{' '}
              {review.parts.map(({ travelerId, position }) => (
                <span key={travelerId}>
                  <Link href={`/travelers/${travelerId}`}>{position}</Link>{' '}
                </span>
              ))}
              <br />
              <span className="soft small">
                Media {review.media.code} failed <InstantText instant={review.checkedAt} />: {review.reasons.join(' ')}
              </span>
            </span>
            <span className="row">
              <StateMark
                state={review.workOrder.releasedAt ? 'stop' : 'waiting'}
                word={review.workOrder.releasedAt ? 'released, nobody decided' : 'here, nobody decided'}
              />
              {mayDecide ? (
                <Button
                  onPress={() => setDeciding(review)}
                  aria-label={`Decide on ${review.lot.number}, ${review.workOrder.number}`}
                >
                  Decide
                </Button>
              ) : null}
            </span>
          </li>
        ))}
      </ul>
      {deciding ? (
        <DecideMediaReview key={deciding.id} review={deciding} signer={signer} onClose={() => setDeciding(undefined)} />
      ) : null}
    </section>
  );
}
