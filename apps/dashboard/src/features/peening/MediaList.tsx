import { mediaOperations } from '@hubwright/contracts/peening/media-operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { DateText, InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { AddMedia } from './add-media.tsx';
import { CheckMedia } from './check-media.tsx';
import { type Machine, type Media, mediaMarks } from './peening.ts';
import { TakeOutMedia } from './take-out-media.tsx';

type Doing = { what: 'check' | 'out'; media: Media };

/** Media lots: what is in which machine, how its checks went, and when the next is due. */
export function MediaList(props: { media: readonly Media[]; machines: readonly Machine[]; signer: Signer }) {
  const [doing, setDoing] = useState<Doing>();
  const [isAdding, setAdding] = useState(false);
  const mayCheck = useMay(mediaOperations.checkPeeningMedia);
  const empty = props.machines.filter(({ media }) => media === null);
  const close = () => setDoing(undefined);
  return (
    <div className="stack">
      {mayCheck && empty.length > 0 ? (
        <div className="row">
          <Button weight="next" onPress={() => setAdding(true)}>
            Put media in
          </Button>
        </div>
      ) : null}
      {props.media.length === 0 ? (
        <EmptyState title="No media is on record">A lot begins with media on record whose check holds.</EmptyState>
      ) : null}
      {props.media.map((media) => (
        <MediaSheet key={media.id} media={media} mayCheck={mayCheck} onDo={setDoing} />
      ))}
      {isAdding ? <AddMedia machines={empty} onClose={() => setAdding(false)} /> : null}
      {doing?.what === 'check' ? <CheckMedia media={doing.media} signer={props.signer} onClose={close} /> : null}
      {doing?.what === 'out' ? <TakeOutMedia media={doing.media} onClose={close} /> : null}
    </div>
  );
}

function MediaSheet(props: { media: Media; mayCheck: boolean; onDo: (doing: Doing) => void }) {
  const { media } = props;
  const isIn = media.takenOutAt === null;
  return (
    <section className="sheet stack" aria-label={media.code}>
      <div className="row between">
        <h2>
          <span className="code">{media.code}</span> {media.size}
        </h2>
        {isIn && props.mayCheck ? (
          <span className="row">
            <Button onPress={() => props.onDo({ what: 'out', media })}>Take it out</Button>
            <Button weight="next" onPress={() => props.onDo({ what: 'check', media })}>
              Check it
            </Button>
          </span>
        ) : null}
      </div>
      <p>
        {media.machine.code}, in since <InstantText instant={media.putInAt} /> by {media.putInBy.displayName}.{' '}
        <span className="soft">
          {media.supplier}, lot {media.supplierLot}, certificate {media.certificate}
        </span>
      </p>
      {isIn ? (
        <p>
          <StateMark {...mediaMarks[media.state]} />{' '}
          {media.dueOn ? (
            <>
              next by <DateText date={media.dueOn} />
            </>
          ) : null}{' '}
          <span className="soft">
            every {media.everyDays} days{media.everyHours ? ` or ${media.everyHours} hours` : ''}
          </span>
        </p>
      ) : (
        <p className="soft">
          Taken out <InstantText instant={media.takenOutAt ?? ''} />: {media.takenOutFor}
        </p>
      )}
      <Checks media={media} />
    </section>
  );
}

function Checks({ media }: { media: Media }) {
  const [newest] = media.checks;
  if (!newest) return <p className="soft">Not checked yet.</p>;
  return (
    <details open={!newest.passed}>
      <summary>
        {media.checks.length === 1 ? '1 check' : `${media.checks.length} checks`}, the newest{' '}
        <InstantText instant={newest.checkedAt} />
      </summary>
      <ul className="lines">
        {media.checks.map((check) => (
          <li key={check.id}>
            <span>
              <InstantText instant={check.checkedAt} />, {check.checkedBy.displayName}
              <br />
              <span className="soft small">
                {check.sieves.map(({ name, percent }) => `${name} ${percent} %`).join('; ')}; {check.broken} broken in{' '}
                {media.limits.field}
                {check.meterHours ? `; counter ${check.meterHours} h` : ''}
              </span>
              {check.reasons.length > 0 ? <span className="small"> {check.reasons.join(' ')}</span> : null}
              {check.note ? <span className="small"> {check.note}</span> : null}
            </span>
            <StateMark state={check.passed ? 'passed' : 'stop'} word={check.passed ? 'good' : 'failed'} />
          </li>
        ))}
      </ul>
    </details>
  );
}
