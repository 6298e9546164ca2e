import { dimensionTitles } from '@hubwright/contracts/manuals/words';
import type { MeasuredPart } from '@hubwright/contracts/work-orders/dimension-operations';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { goOn, limitText, marks } from './MeasureEntries.tsx';
import styles from './measure-entries.module.css';
import { type Entries, type Measure, standingOf } from './traveler.ts';

interface Grid {
  measures: readonly Measure[];
  all: readonly Measure[];
  entries: Entries;
  onChange: (entries: Entries) => void;
  /** What is known of these dimensions: as found and on earlier visits. */
  rows: MeasuredPart['rows'];
}

/** What it was before, in a few words; never a value to take over. */
function before(measure: Measure, rows: MeasuredPart['rows']): string {
  const row = rows.find(
    ({ dimension, station }) =>
      dimension === measure.dimension && station !== null && Number(station) === Number(measure.station),
  );
  const last = row?.past.at(-1);
  const found = row?.asFound ? [`as found ${row.asFound.value}`] : [];
  return [...found, ...(last ? [`last visit ${last.value}`] : [])].join(', ');
}

function Cell({ measure, grid }: { measure: Measure; grid: Grid }) {
  const { all, entries, onChange, rows } = grid;
  const standing = standingOf(measure, { measures: all, entries });
  return (
    <td className={standing === 'outside' ? styles.isOutside : undefined}>
      <DecimalField
        name={`values/${all.indexOf(measure)}/value`}
        label={measure.name}
        hint={limitText(measure)}
        unit={measure.unit}
        size={7}
        decimals={Math.max(measure.decimals + 2, 0)}
        value={entries[measure.id] ?? ''}
        onChange={(value) => onChange({ ...entries, [measure.id]: value })}
        isRequired
      />
      <span className={styles.cellFoot}>
        <StateMark {...marks[standing]} />
        <span className="soft small">{before(measure, rows)}</span>
      </span>
    </td>
  );
}

/** Values by blade station: a row a station, a column a dimension, root to tip, in the order a caliper goes along the blade. */
export function StationGrid(grid: Grid) {
  const { measures } = grid;
  const dimensions = [...new Set(measures.flatMap(({ dimension }) => dimension ?? []))];
  const stations = [...new Set(measures.map(({ station }) => Number(station)))].sort((a, b) => a - b);
  return (
    <div className={styles.gridFrame}>
      <table className={styles.grid}>
        <caption className="only-heard">Values by blade station</caption>
        <thead>
          <tr>
            <th scope="col">Station</th>
            {dimensions.map((dimension) => (
              <th key={dimension} scope="col">
                {dimensionTitles[dimension]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody onKeyDown={goOn}>
          {stations.map((station) => (
            <tr key={station}>
              <th scope="row">{station}</th>
              {dimensions.map((dimension) => {
                const measure = measures.find((one) => one.dimension === dimension && Number(one.station) === station);
                return measure ? <Cell key={dimension} measure={measure} grid={grid} /> : <td key={dimension} />;
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
