import { dimensionTitles } from '@hubwright/contracts/manuals/words';
import type { MeasuredPart } from '@hubwright/contracts/work-orders/dimension-operations';
import { type Filling, GridCell } from './GridCell.tsx';
import styles from './measure-entries.module.css';
import type { Measure } from './traveler.ts';

interface Grid extends Filling {
  measures: readonly Measure[];
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
        <tbody>
          {stations.map((station) => (
            <tr key={station}>
              <th scope="row">{station}</th>
              {dimensions.map((dimension) => {
                const measure = measures.find((one) => one.dimension === dimension && Number(one.station) === station);
                return measure ? (
                  <GridCell key={dimension} measure={measure} filling={grid} before={before(measure, grid.rows)} />
                ) : (
                  <td key={dimension} />
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
