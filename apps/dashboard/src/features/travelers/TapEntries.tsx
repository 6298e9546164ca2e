import { chordParts, surfaces } from '@hubwright/contracts/manuals/words';
import { type TapCell, TapMap } from '../../ui/pictures/TapMap.tsx';
import { type Filling, GridCell } from './GridCell.tsx';
import styles from './measure-entries.module.css';
import { type Measure, standingOf } from './traveler.ts';

type Zoned = Measure & { readonly zone: NonNullable<Measure['zone']> };
type Props = Filling & { readonly measures: readonly Measure[] };

function cellOf(measure: Zoned, { all, entries }: Filling): TapCell {
  const standing = standingOf(measure, { measures: all, entries });
  const state = standing === 'inside' ? 'clear' : standing === 'outside' ? 'too-much' : 'open';
  return { ...measure.zone, state, value: entries[measure.id] ?? null, most: measure.high, unit: measure.unit };
}

function Side({ surface, zones, filling }: { surface: string; zones: readonly Zoned[]; filling: Filling }) {
  const own = zones.filter(({ zone }) => zone.surface === surface);
  const spans = [...new Set(own.map(({ zone }) => `${zone.from}–${zone.to}`))];
  return (
    <table className={styles.grid}>
      <caption>{surface === 'face' ? 'Face side' : 'Camber side'}</caption>
      <thead>
        <tr>
          <th scope="col">Station</th>
          {chordParts.map((chord) => (
            <th key={chord} scope="col">
              {chord}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {spans.map((span) => (
          <tr key={span}>
            <th scope="row">{span}</th>
            {chordParts.map((chord) => {
              const measure = own.find(({ zone }) => `${zone.from}–${zone.to}` === span && zone.chord === chord);
              return measure ? <GridCell key={chord} measure={measure} filling={filling} /> : <td key={chord} />;
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The tap map as it is filled: both sides of the blade as a drawing, and a box for each zone, root to tip. */
export function TapEntries(props: Props) {
  const zones = props.measures.filter((measure): measure is Zoned => measure.zone !== null);
  return (
    <>
      <div className={styles.outline}>
        <TapMap title="Tap map" cells={zones.map((measure) => cellOf(measure, props))} />
      </div>
      <div className={styles.gridFrame}>
        {surfaces.map((surface) => (
          <Side key={surface} surface={surface} zones={zones} filling={props} />
        ))}
      </div>
    </>
  );
}
