import { recordOperations } from '@hubwright/contracts/records/operations';
import { useCommand } from '../../api/command.ts';
import { AgeText, InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { FormProblem } from '../../ui/FormProblem.tsx';
import { type State, StateMark } from '../../ui/StateMark.tsx';
import { bytesText, type Keeping } from './record-keeping.ts';

function backupMark({ backupEveryHours, backupFailure, backupOverdue, newestBackup }: Keeping): {
  state: State;
  word: string;
} {
  if (backupFailure) return { state: 'stop', word: 'the last try failed' };
  if (backupEveryHours === null) return { state: 'hold', word: 'none by itself' };
  if (!newestBackup) return { state: 'waiting', word: 'the first is due' };
  return backupOverdue ? { state: 'stop', word: 'too old' } : { state: 'passed', word: 'in time' };
}

/** How old the newest backup is, and one more on request. */
export function BackupSheet({ keeping }: { keeping: Keeping }) {
  const backup = useCommand(recordOperations.takeBackup);
  const { newestBackup, backupEveryHours, backupFailure, backupCount, backupRunning } = keeping;
  return (
    <section className="sheet stack" aria-label="Backups">
      <div className="row between">
        <h2>Backups</h2>
        <StateMark {...backupMark(keeping)} />
      </div>
      <dl className="facts">
        <div>
          <dt>Newest</dt>
          <dd>
            {newestBackup ? (
              <>
                <AgeText instant={newestBackup.at} />, {bytesText(newestBackup.bytes)}
              </>
            ) : (
              'none yet'
            )}
          </dd>
        </div>
        <div>
          <dt>Kept</dt>
          <dd>{backupCount} of at most 14</dd>
        </div>
        <div>
          <dt>Written by itself</dt>
          <dd>{backupEveryHours === null ? 'no' : `every ${backupEveryHours} hours`}</dd>
        </div>
      </dl>
      {newestBackup ? (
        <p className="soft small">
          Taken <InstantText instant={newestBackup.at} />. A backup on the same disk does not survive the disk: copy it
          elsewhere.
        </p>
      ) : null}
      {backupFailure ? <p>The last try: {backupFailure}</p> : null}
      <FormProblem problem={backup.error} />
      <div className="row no-print">
        <Button isDisabled={backupRunning || backup.isPending} onPress={() => backup.mutate({ input: {} })}>
          {backupRunning ? 'Writing one now' : 'Write one now'}
        </Button>
      </div>
    </section>
  );
}
