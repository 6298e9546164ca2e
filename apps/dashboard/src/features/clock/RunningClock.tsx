import { clockOperations } from '@hubwright/contracts/work-orders/clock-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { AgeText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { say } from '../../ui/toasts.tsx';
import styles from './clock.module.css';
import { myClockQuery, workWords } from './clock.ts';
import { MendTime } from './mend-time.tsx';

/** What one's clock runs on, on every page; nothing where nothing runs. A forgotten one asks to be mended first. */
export function RunningClock() {
  const clock = useQuery(myClockQuery).data;
  const stop = useCommand(clockOperations.stopClock);
  const [isMending, setMending] = useState(false);
  const forgotten = clock?.forgotten[0];
  if (forgotten)
    return (
      <span className={styles.running}>
        <StateMark state="hold" word="clock forgotten" />
        <Button weight="quiet" onPress={() => setMending(true)}>
          Mend
        </Button>
        {isMending ? <MendTime entry={forgotten} onClose={() => setMending(false)} /> : null}
      </span>
    );
  const running = clock?.running;
  if (!running) return null;
  const words = workWords(running);
  return (
    <section className={styles.running} aria-label="Your clock">
      <span className={styles.what}>
        {running.step ? (
          <Link href={`/travelers/${running.step.travelerId}?step=${running.step.id}`}>{words}</Link>
        ) : (
          words
        )}
      </span>
      <span className="soft">
        <AgeText instant={running.startedAt} />
      </span>
      <Button
        weight="quiet"
        isPending={stop.isPending}
        onPress={() =>
          stop.mutate(
            { input: {} },
            { onSuccess: () => say('Your clock stopped.'), onError: ({ facts }) => say(facts.detail || facts.title) },
          )
        }
      >
        Scan out
      </Button>
    </section>
  );
}
