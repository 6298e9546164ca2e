import { StateMark } from '../../ui/StateMark.tsx';
import styles from './build.module.css';
import { type PositionGroup, standingOfGroup } from './position-groups.ts';

/** The groups of positions as buttons, each with how many are to go; the chosen one stays pressed. */
export function GroupChoice(props: {
  groups: readonly PositionGroup[];
  chosen: string;
  onChoose: (key: string) => void;
}) {
  return (
    <fieldset className={styles.groups} aria-label="Positions to show">
      {props.groups.map(({ key, lines }) => {
        const { state, words } = standingOfGroup(lines);
        return (
          <button
            key={key}
            type="button"
            className={styles.group}
            aria-pressed={key === props.chosen}
            onClick={() => props.onChoose(key === props.chosen ? '' : key)}
          >
            <span>{key}</span>
            <StateMark state={state} word={words} />
          </button>
        );
      })}
    </fieldset>
  );
}
