import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { Caution } from '../../ui/Caution.tsx';
import { Adjust } from './adjust.tsx';
import { type Ending, EndRun } from './end-run.tsx';
import styles from './governor.module.css';
import { nextPoint, type Run } from './governor.ts';
import { ImportReadings } from './import-readings.tsx';
import { LiveReadings } from './LiveReadings.tsx';
import { PointList } from './PointList.tsx';
import { TakeReading } from './take-reading.tsx';

type Doing = 'adjust' | 'import' | Ending;

function Doings({ run, onDo }: { run: Run; onDo: (doing: Doing) => void }) {
  return (
    <div className="row actions">
      {run.passes ? (
        <Button weight="next" onPress={() => onDo('passed')}>
          Every point is good: end the run
        </Button>
      ) : null}
      <Button onPress={() => onDo('adjust')}>Something was adjusted</Button>
      <Button onPress={() => onDo('import')}>Readings from a file</Button>
      {run.out.length > 0 ? <Button onPress={() => onDo('failed')}>It does not pass: end as failed</Button> : null}
      <Button weight="quiet" onPress={() => onDo('broken-off')}>
        Break the run off
      </Button>
    </div>
  );
}

/** An open run at the bench: the points, the one in turn large, what the bench sends, and the end. */
export function RunBench({ run, mayTake }: { run: Run; mayTake: boolean }) {
  const [picked, setPicked] = useState<string>();
  const [doing, setDoing] = useState<Doing>();
  const name = picked ?? nextPoint(run) ?? run.standing[0]?.point;
  const point = run.program.content.points.find((one) => one.name === name);
  const close = () => {
    setDoing(undefined);
    setPicked(undefined);
  };
  return (
    <div className={styles.bench}>
      <PointList run={run} chosen={name} onChoose={setPicked} />
      {mayTake && point ? (
        <div className={`${styles.entry} stack`}>
          <Caution>Hot oil under pressure and a turning drive: guard closed, hands off while it turns.</Caution>
          {point.instruction ? <p>{point.instruction}</p> : null}
          {/* After a reading the next point comes by itself; a new key empties the entry. */}
          <TakeReading
            key={`${point.name} ${run.version}`}
            run={run}
            point={point}
            onTaken={() => setPicked(undefined)}
          />
          {run.linked ? <LiveReadings run={run} point={point} onTaken={() => setPicked(undefined)} /> : null}
          <Doings run={run} onDo={setDoing} />
        </div>
      ) : null}
      {doing === 'adjust' ? <Adjust run={run} onClose={close} /> : null}
      {doing === 'import' ? <ImportReadings run={run} onClose={close} /> : null}
      {doing === 'passed' || doing === 'failed' || doing === 'broken-off' ? (
        <EndRun run={run} result={doing} onClose={close} />
      ) : null}
    </div>
  );
}
