import { type Stage, stageTitles } from '@hubwright/contracts/work-orders/states';
import styles from './desk.module.css';
import { way } from './order-words.ts';

/** Where the unit is on its way through the house; a unit off the way says so in words alone. */
export function StageWay({ stage }: { stage: Stage }) {
  const at = way.indexOf(stage === 'closed' ? 'shipped' : stage);
  if (at < 0) return <p>{stageTitles[stage]}</p>;
  return (
    <ol className={styles.way} aria-label="Where it is">
      {way.map((each, place) => (
        <li
          key={each}
          className={place < at || stage === 'closed' ? styles.passed : place === at ? styles.here : undefined}
          {...(place === at ? { 'aria-current': 'step' as const } : {})}
        >
          {each === 'released' ? 'Approved' : stageTitles[each]}
        </li>
      ))}
    </ol>
  );
}
