import { useState } from 'react';
import { FileTrigger } from 'react-aria-components';
import { mayCall } from '../../api/permission.ts';
import { Button } from '../../ui/Button.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { AddPhoto } from './add-photo.tsx';
import { PhotoViewer } from './PhotoViewer.tsx';
import styles from './photos.module.css';
import { addOperations, isPicture, type Photo, type Shown, thumbnailAddress, usePhotos } from './photos.ts';
import type { Viewer } from './strike-photo.tsx';

const pictures = ['image/jpeg', 'image/png', 'image/webp'];

/** Photos of one thing, small; a press enlarges. Who may, takes one with the tablet's camera or chooses a file. */
export function PhotoStrip({ shown, viewer, title }: { shown: Shown; viewer: Viewer; title?: string }) {
  const photos = usePhotos(shown);
  const [opened, setOpened] = useState<string>();
  const [chosen, setChosen] = useState<File>();
  const choose = (files: FileList | null) => setChosen(files?.[0]);
  const mayAdd = mayCall(addOperations[shown.kind], viewer.roles);
  if (photos.rows.length === 0 && !mayAdd && !photos.problem) return null;
  return (
    <section className="stack" aria-label={title ?? 'Photos'}>
      {title ? <h2>{title}</h2> : null}
      {photos.problem ? <Refusal problem={photos.problem} /> : null}
      {photos.rows.length > 0 ? (
        <ul className={styles.strip}>
          {photos.rows.map((photo) => (
            <li key={photo.id}>
              <Thumbnail photo={photo} onPress={() => setOpened(photo.id)} />
            </li>
          ))}
        </ul>
      ) : null}
      {photos.more ? (
        <Button weight="quiet" onPress={photos.more}>
          Show more photos
        </Button>
      ) : null}
      {mayAdd ? (
        <div className="row">
          <FileTrigger acceptedFileTypes={pictures} defaultCamera="environment" onSelect={choose}>
            <Button>Take a photo</Button>
          </FileTrigger>
          <FileTrigger acceptedFileTypes={[...pictures, 'application/pdf']} onSelect={choose}>
            <Button weight="quiet">Choose a file</Button>
          </FileTrigger>
        </div>
      ) : null}
      {chosen ? <AddPhoto shown={shown} file={chosen} onClose={() => setChosen(undefined)} /> : null}
      {opened ? (
        <PhotoViewer
          photos={photos.rows}
          opened={opened}
          viewer={viewer}
          onOpen={setOpened}
          onClose={() => setOpened(undefined)}
        />
      ) : null}
    </section>
  );
}

function Thumbnail({ photo, onPress }: { photo: Photo; onPress: () => void }) {
  const words = `${photo.title}${photo.struck ? ' (struck)' : ''}`;
  return (
    <button type="button" className={styles.thumbnail} data-struck={photo.struck !== null} onClick={onPress}>
      {isPicture(photo) ? (
        <img src={thumbnailAddress(photo)} alt={words} loading="lazy" />
      ) : (
        <span className={styles.paper}>PDF: {words}</span>
      )}
      {photo.struck ? <span className={styles.mark}>struck</span> : null}
    </button>
  );
}
