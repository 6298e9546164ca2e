import { useEffect, useState } from 'react';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Progress } from '../../ui/Progress.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import styles from './photos.module.css';
import type { Shown } from './photos.ts';
import { useSendPhoto } from './use-send-photo.ts';

/** What a chosen file shows, before it is sent; nothing is put on record without a sentence for who cannot see it. */
export function AddPhoto({ shown, file, onClose }: { shown: Shown; file: File; onClose: () => void }) {
  const [title, setTitle] = useState('');
  const { send, share, isPending, problem } = useSendPhoto(shown, file);
  const takenAt = new Date(Math.min(file.lastModified, Date.now())).toISOString();
  return (
    <Dialog title="Put a photo on record" isOpen onClose={onClose}>
      <CommandForm
        problem={problem}
        isPending={isPending}
        submit={problem?.mayRepeat ? 'Try again' : 'Put on record'}
        onCancel={onClose}
        onSubmit={() =>
          void send({ title, takenAt }, () => {
            say('The photo is on record.');
            onClose();
          })
        }
      >
        <Preview file={file} />
        <TextField
          name="title"
          label="What it shows"
          hint="Part, place and damage, as you would say it to someone who cannot see it"
          value={title}
          onChange={setTitle}
          isRequired
        />
        <p className="small soft">
          The place where it was taken and what the camera writes beside a picture are not kept.
        </p>
        {isPending ? <Progress label="Percent sent" done={Math.round(share * 100)} of={100} /> : null}
      </CommandForm>
    </Dialog>
  );
}

/** The picture as it lies on this device. */
function Preview({ file }: { file: File }) {
  const [address, setAddress] = useState<string>();
  const [isShown, setShown] = useState(true);
  useEffect(() => {
    const made = URL.createObjectURL(file);
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [file]);
  if (file.type === 'application/pdf') return <p>A document of {Math.ceil(file.size / 1024)} KB</p>;
  if (!isShown) return <p>This device cannot show the file.</p>;
  if (!address) return null;
  return <img className={styles.preview} src={address} alt="As chosen, not sent yet" onError={() => setShown(false)} />;
}
