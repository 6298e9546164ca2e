import { drawingOf, type FindingSpot, hubFaces, spotText } from '@hubwright/contracts/findings/spot';
import { chordParts, type PartClass, surfaces } from '@hubwright/contracts/manuals/words';
import { Button } from '../../ui/Button.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { SpotPicture } from '../../ui/pictures/SpotPicture.tsx';
import { Select } from '../../ui/Select.tsx';

const choicesOf = <V extends string>(values: readonly V[]) => values.map((value) => ({ value, text: value }));
const rings = ['inner', 'middle', 'outer'] as const;

type Change = (spot: FindingSpot) => void;

function BladeFields({ spot, onChange }: { spot: FindingSpot & { on: 'blade' }; onChange: Change }) {
  return (
    <>
      <Select
        name="spot/surface"
        label="Side"
        value={spot.surface}
        onChange={(surface) => onChange({ ...spot, surface })}
        choices={choicesOf(surfaces)}
      />
      <DecimalField
        name="spot/station"
        label="Blade station"
        value={spot.station}
        decimals={2}
        onChange={(station) => onChange({ ...spot, station })}
      />
      <Select
        name="spot/chord"
        label="Along the chord"
        value={spot.chord}
        onChange={(chord) => onChange({ ...spot, chord })}
        choices={choicesOf(chordParts)}
      />
    </>
  );
}

function HubFields({ spot, onChange }: { spot: FindingSpot & { on: 'hub' }; onChange: Change }) {
  return (
    <>
      <Select
        name="spot/face"
        label="Face"
        value={spot.face}
        onChange={(face) => onChange({ ...spot, face })}
        choices={choicesOf(hubFaces)}
      />
      <DecimalField
        name="spot/degrees"
        label="Degrees from blade 1"
        value={String(spot.degrees)}
        decimals={0}
        onChange={(degrees) => onChange({ ...spot, degrees: Number(degrees) % 360 })}
      />
      <Select
        name="spot/ring"
        label="How far out"
        value={spot.ring}
        onChange={(ring) => onChange({ ...spot, ring })}
        choices={choicesOf(rings)}
      />
    </>
  );
}

/** Picks the place on the drawing of the part; the fields beside it say the same for keyboard and correction. */
export function SpotFields(props: { partClass: PartClass; spot: FindingSpot | null; onChange: Change }) {
  const on = drawingOf(props.partClass);
  if (!on) return null;
  const { spot, onChange } = props;
  const begun: FindingSpot =
    on === 'blade'
      ? { on, surface: 'face', station: '0', chord: 'middle' }
      : { on, face: 'front', degrees: 0, ring: 'middle' };
  return (
    <div className="stack">
      <SpotPicture
        title={`Touch where it is on the ${on}`}
        words={spot ? spotText(spot) : 'Nothing is marked yet.'}
        on={on}
        marked={spot ? [{ label: '×', spot }] : []}
        onPick={onChange}
      />
      {spot === null ? (
        <p>
          <Button weight="quiet" onPress={() => onChange(begun)}>
            Enter the place by hand
          </Button>
        </p>
      ) : (
        <div className="field-grid">
          {spot.on === 'blade' ? (
            <BladeFields spot={spot} onChange={onChange} />
          ) : (
            <HubFields spot={spot} onChange={onChange} />
          )}
        </div>
      )}
    </div>
  );
}
