import { useSuspenseQuery } from '@tanstack/react-query';
import { useMe } from '../../api/me.ts';
import { BackupSheet } from '../../features/records/BackupSheet.tsx';
import { KeySheet } from '../../features/records/KeySheet.tsx';
import { RetentionSheet } from '../../features/records/RetentionSheet.tsx';
import { keepingQuery } from '../../features/records/record-keeping.ts';
import styles from './administration.module.css';

/** While a backup is being written the page asks again: nothing else tells when it is whole. */
const whileWriting = {
  refetchInterval: ({ state }: { state: { data?: { backupRunning: boolean } | undefined } }) =>
    state.data?.backupRunning ? 2_000 : 60_000,
};

export function RecordKeepingPage() {
  const keeping = useSuspenseQuery({ ...keepingQuery, ...whileWriting }).data;
  const me = useMe();
  return (
    <div className={styles.keeping}>
      <BackupSheet keeping={keeping} />
      <KeySheet keeping={keeping} signer={me} />
      <RetentionSheet keeping={keeping} signer={me} />
    </div>
  );
}
