import { figureOf, MeterFigure, meterWords, typedAs } from '../../format/meter-words.tsx';
import { DateText } from '../../format/values.tsx';
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
  const { unit, decimals, name: figure } = typedAs(row.meter);
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
              last <MeterFigure meter={row.meter} figure={figureOf(row.last)} /> on <DateText date={row.last.readOn} />
            </>
          ) : (
            'never read'
          )}
        </p>
      </div>
      <DecimalField
        name={name(figure)}
        label={`${row.aircraft.registration} shows`}
        unit={unit}
        decimals={decimals}
        value={entry.hours}
        onChange={(hours) => set({ hours })}
      />
      {doubt === 'lower' || entry.isReplaced ? (
        <div className={styles.asked}>
          <p>Lower than the last reading. Read it again; if it is right:</p>
          <Checkbox isSelected={entry.isReplaced} onChange={(isReplaced) => set({ isReplaced })}>
            The meter was replaced, and the new one began at nought
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
                unit={unit}
                decimals={decimals}
                value={entry.oldHours}
                onChange={(oldHours) => set({ oldHours })}
              />
            </div>
          ) : null}
        </div>
      ) : null}
      {doubt === 'fast' ? (
        <div className={styles.asked}>
          <p>
            More than {unit === 'h' ? 'twelve hours' : 'sixty cycles'} a day since the last reading. Ask again; if it is
            right:
          </p>
          <Checkbox isSelected={entry.isSure} onChange={(isSure) => set({ isSure })}>
            It was looked at again
          </Checkbox>
        </div>
      ) : null}
    </li>
  );
}
