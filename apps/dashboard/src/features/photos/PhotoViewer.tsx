import { useState } from 'react';
import { AgeText, InstantText } from '../../format/values.tsx';
import { Button, LinkButton } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import styles from './photos.module.css';
import { fileAddress, isPicture, type Photo } from './photos.ts';
import { mayStrike, StrikePhoto, type Viewer } from './strike-photo.tsx';

export interface PhotoViewerProps {
  photos: readonly Photo[];
  opened: string;
  viewer: Viewer;
  onOpen: (id: string) => void;
  onClose: () => void;
}

/** One photo large; the arrow keys go to the one before and after, Escape back to the sheet. */
export function PhotoViewer({ photos, opened, viewer, onOpen, onClose }: PhotoViewerProps) {
  const [isStriking, setStriking] = useState(false);
  const place = photos.findIndex(({ id }) => id === opened);
  const photo = photos[place];
  if (!photo) return null;
  if (isStriking) return <StrikePhoto photo={photo} onClose={() => setStriking(false)} />;
  const go = (by: number) => {
    const next = photos[place + by];
    if (next) onOpen(next.id);
  };
  return (
    <Dialog title={`Photo ${place + 1} of ${photos.length}`} isOpen onClose={onClose} width="wide">
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the keys are a shorter way to the buttons below */}
      <div
        className="stack"
        onKeyDown={({ key }) => {
          if (key === 'ArrowLeft') go(-1);
          if (key === 'ArrowRight') go(1);
        }}
      >
        {isPicture(photo) ? (
          <img className={styles.large} src={fileAddress(photo)} alt={photo.title} />
        ) : (
          <LinkButton href={fileAddress(photo)} target="_blank">
            Save the document
          </LinkButton>
        )}
        <Facts photo={photo} />
        <div className="row">
          <Button autoFocus={place === 0} isDisabled={place === 0} onPress={() => go(-1)}>
            Previous
          </Button>
          <Button autoFocus isDisabled={place === photos.length - 1} onPress={() => go(1)}>
            Next
          </Button>
          {mayStrike(photo, viewer) ? (
            <Button weight="stop" onPress={() => setStriking(true)}>
              Strike
            </Button>
          ) : null}
        </div>
      </div>
    </Dialog>
  );
}

function Facts({ photo: { title, struck, addedBy, addedAt, takenAt } }: { photo: Photo }) {
  return (
    <div className="stack tight">
      <p>{struck ? <s>{title}</s> : title}</p>
      {struck ? (
        <p>
          Struck by {struck.by.displayName} <AgeText instant={struck.at} /> ago: {struck.reason}
        </p>
      ) : null}
      <p className="small soft">
        Put on record by {addedBy.displayName} <InstantText instant={addedAt} />
        {takenAt ? (
          <>
            ; taken <InstantText instant={takenAt} />, says the device
          </>
        ) : null}
      </p>
    </div>
  );
}
