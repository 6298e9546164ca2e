import type { SaidLine } from '@hubwright/contracts/work-orders/sheet-entries';
import { InstantText } from '../../../format/values.tsx';
import styles from '../measure-entries.module.css';

/** A sheet in words, as it is signed. */
export function SaidLines({ said }: { said: readonly SaidLine[] }) {
  if (said.length === 0) return null;
  return (
    <ul className={`small ${styles.signed}`}>
      {said.map((line) => (
        <li key={line.name}>
          <span>{line.name}</span>
          <strong>{'at' in line ? <InstantText instant={line.at} /> : line.value}</strong>
        </li>
      ))}
    </ul>
  );
}
