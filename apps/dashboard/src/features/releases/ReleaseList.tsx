import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { CorrectRelease } from './correct-release.tsx';
import { pdfAddress, type Release } from './releases.ts';

function One({ release, onCorrect }: { release: Release; onCorrect: (() => void) | undefined }) {
  const name = <strong className="code">{release.number}</strong>;
  return (
    <li>
      <div className="stack tight">
        <p>
          {release.supersededBy ? <s>{name}</s> : name}, {release.word}, approved by {release.approvedBy.displayName}{' '}
          <InstantText instant={release.releasedAt} />
        </p>
        {release.supersedes ? (
          <p className="small">
            Corrects <span className="code">{release.supersedes.number}</span>: {release.supersedes.reason}
          </p>
        ) : null}
        <p className="row">
          {release.supersededBy ? (
            <StateMark state="note" word={`superseded by ${release.supersededBy.number}`} />
          ) : (
            <StateMark state="signed" word="in force" />
          )}
          <a href={pdfAddress(release.id)}>
            Open the archived PDF<span className="only-heard"> of {release.number}</span>
          </a>
        </p>
      </div>
      {onCorrect ? <Button onPress={onCorrect}>Correct it…</Button> : null}
    </li>
  );
}

/** Every version of the release, newest first; an old one stays as it was archived and says what took its place. */
export function ReleaseList({ releases, signer }: { releases: readonly Release[]; signer: Signer }) {
  const mayCorrect = useMay(releaseOperations.correctRelease);
  const [correcting, setCorrecting] = useState<Release>();
  if (releases.length === 0) return null;
  return (
    <>
      <ul className="lines" aria-label="Releases">
        {releases.map((release) => (
          <One
            key={release.id}
            release={release}
            onCorrect={mayCorrect && !release.supersededBy ? () => setCorrecting(release) : undefined}
          />
        ))}
      </ul>
      {correcting ? (
        <CorrectRelease release={correcting} signer={signer} onClose={() => setCorrecting(undefined)} />
      ) : null}
    </>
  );
}
