import { countOf } from '../../format/numbers.ts';
import { StateMark } from '../../ui/StateMark.tsx';
import styles from './build.module.css';
import type { BuildSheet } from './build-sheet.ts';
import { leftOverOf } from './left-over.ts';

/** As many rows as are read at a glance; a build that has only begun has more, and its lists are above. */
const atAGlance = 15;

/** What keeps the build from closing, piece by piece; said in one line while the build is under way. */
export function LeftOverList({ sheet }: { sheet: BuildSheet }) {
  if (sheet.judgement.closed) {
    return (
      <p>
        <StateMark state="passed" word="nothing left over, nothing missing" />
      </p>
    );
  }
  const lists = leftOverOf(sheet);
  const rows = lists.reduce((sum, list) => sum + list.rows.length, 0);
  return (
    <details open={rows <= atAGlance}>
      <summary>
        Not yet: {lists.map((list) => `${countOf(list.rows.length, 'part')} ${list.where}`).join(', ')}. Named:
      </summary>
      <div className={styles.left}>
        {lists.map((list) => (
          <section key={list.where}>
            <h3>
              <StateMark state="short" word={list.where} />
            </h3>
            <ul>
              {list.rows.map((row) => (
                <li key={row}>{row}</li>
              ))}
            </ul>
          </section>
        ))}
      </div>
    </details>
  );
}
