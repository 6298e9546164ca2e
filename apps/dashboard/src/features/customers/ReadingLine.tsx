import { meterWords } from '../../format/meter-words.ts';
import { DateText, Hours } from '../../format/values.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import styles from './readings.module.css';
import { doubtOf, type GridEntry, type GridRow } from './readings-draft.ts';

/** One meter: what it showed last, what it shows now, and what that asks. */
export function ReadingLine(props: {
  row: GridRow;
  /** Its place among the rows that carry a figure: where the server's answer points. */
  at: number;
  readOn: string;
  entry: GridEntry;
  onChange: (entry: GridEntry) => void;
}) {
  const { row, at, readOn, entry } = props;
  const set = (changes: Partial<GridEntry>) => props.onChange({ ...entry, ...changes });
  const doubt = doubtOf(row, entry, readOn);
  const name = (field: string) => (at < 0 ? `${row.key} ${field}` : `rows/${at}/${field}`);
  return (
    <li className={styles.line}>
      <div>
        <span className="code">{row.aircraft.registration}</span> {meterWords[row.meter]}
        <p className="small soft">
          {row.last ? (
            <>
              last <Hours tenths={row.last.hoursTenths} /> on <DateText date={row.last.readOn} />
            </>
          ) : (
            'never read'
          )}
        </p>
      </div>
      <DecimalField
        name={name('hoursTenths')}
        label={`${row.aircraft.registration} shows`}
        unit="h"
        decimals={1}
        value={entry.hours}
        onChange={(hours) => set({ hours })}
      />
      {doubt === 'lower' || entry.isReplaced ? (
        <div className={styles.asked}>
          <p>Lower than the last reading. Read it again; if it is right:</p>
          <Checkbox isSelected={entry.isReplaced} onChange={(isReplaced) => set({ isReplaced })}>
            The meter was replaced, and the new one began at 0.0
          </Checkbox>
          {entry.isReplaced ? (
            <div className="row">
              <DateField
                name={name('replaced')}
                label="Replaced on"
                value={entry.replacedOn}
                onChange={(replacedOn) => set({ replacedOn })}
                isRequired
              />
              <DecimalField
                name={name('replaced/oldTenths')}
                label="The old one showed last"
                hint="Leave empty when nobody wrote it down"
                unit="h"
                decimals={1}
                value={entry.oldHours}
                onChange={(oldHours) => set({ oldHours })}
              />
            </div>
          ) : null}
        </div>
      ) : null}
      {doubt === 'fast' ? (
        <div className={styles.asked}>
          <p>More than twelve hours a day since the last reading. Ask again; if it is right:</p>
          <Checkbox isSelected={entry.isSure} onChange={(isSure) => set({ isSure })}>
            It was looked at again
          </Checkbox>
        </div>
      ) : null}
    </li>
  );
}
