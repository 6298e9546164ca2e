import { useQuery } from '@tanstack/react-query';
import { CheckboxList } from '../../ui/Checkbox.tsx';
import { frozenLotsQuery } from './traveler.ts';

/** The lots of resin and film that went into it, by their labels; none is ticked beforehand. */
export function MaterialField(props: {
  materials: readonly string[];
  value: readonly string[];
  onChange: (lotIds: string[]) => void;
}) {
  const lots = (useQuery(frozenLotsQuery).data?.rows ?? []).filter(({ part }) => props.materials.includes(part.number));
  return (
    <CheckboxList
      name="lotIds"
      label={`Lots used of ${props.materials.join(', ')}`}
      value={props.value}
      onChange={props.onChange}
      choices={lots.map(({ id, code, part, over, outMinutes, outTimeHours }) => ({
        value: id,
        text: `${code} ${part.number}, out ${(outMinutes / 60).toFixed(1)} of ${outTimeHours} h${over ? `, NOT GOOD: ${over}` : ''}`,
      }))}
      isRequired
    />
  );
}
