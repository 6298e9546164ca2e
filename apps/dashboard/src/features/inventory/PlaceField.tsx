import { Select } from '../../ui/Select.tsx';
import type { Lot } from './lots.ts';

type LotPlace = Lot['places'][number];
type Kind = 'bin' | 'quarantine' | 'held';

/** Places of a lot from which pieces can be taken. */
export function placesOf(lot: Lot, kinds: readonly Kind[]): LotPlace[] {
  return lot.places.filter(({ kind, onHand }) => onHand > 0 && kinds.some((each) => each === kind));
}

/** How a command names the place: a bin by its code, and none for where such pieces lie otherwise. */
export function binOf(place: LotPlace | undefined): { bin?: string } {
  return place?.kind === 'bin' ? { bin: place.ref } : {};
}

/** Which of the places the pieces are taken from. */
export function PlaceField(props: {
  places: readonly LotPlace[];
  value: string | null;
  onChange: (title: string | null) => void;
}) {
  return (
    <Select
      name="bin"
      label="Where they lie"
      placeholder="Choose the place"
      value={props.value}
      onChange={props.onChange}
      choices={props.places.map((each) => ({ value: each.title, text: `${each.title} (${each.onHand} there)` }))}
      isRequired
    />
  );
}
