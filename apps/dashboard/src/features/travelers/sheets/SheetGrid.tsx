import { DecimalField } from '../../../ui/DecimalField.tsx';
import { type State, StateMark } from '../../../ui/StateMark.tsx';
import styles from '../measure-entries.module.css';

export interface Cell {
  /** Where it stands in the command’s input. */
  readonly name: string;
  /** For who hears the page; row and column name it for who sees it. */
  readonly label: string;
  readonly hint?: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly mark: { readonly state: State; readonly word: string };
}

/** A box for each row and column of a sheet, and how it stands under it. */
export function SheetGrid(props: {
  caption: string;
  corner: string;
  columns: readonly { readonly key: string; readonly head: string; readonly limits: string }[];
  rows: readonly { readonly key: string; readonly head: string; readonly cells: readonly Cell[] }[];
}) {
  return (
    <div className={styles.gridFrame}>
      <table className={styles.grid}>
        <caption>{props.caption}</caption>
        <thead>
          <tr>
            <th scope="col">{props.corner}</th>
            {props.columns.map(({ key, head, limits }) => (
              <th key={key} scope="col">
                {head}
                <span className={`soft small ${styles.limits}`}> {limits}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {props.rows.map(({ key, head, cells }) => (
            <tr key={key}>
              <th scope="row">{head}</th>
              {cells.map(({ mark, ...cell }) => (
                <td key={cell.name} className={mark.state === 'stop' ? styles.isOutside : undefined}>
                  <DecimalField {...cell} size={6} decimals={6} isRequired />
                  <span className={styles.cellFoot}>
                    <StateMark {...mark} />
                  </span>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
