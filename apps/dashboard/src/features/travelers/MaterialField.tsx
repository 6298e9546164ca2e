import { useQueries, useQuery } from '@tanstack/react-query';
import { CheckboxList } from '../../ui/Checkbox.tsx';
import { frozenLotsQuery, lotsQuery } from './traveler.ts';

/** Lots on hand of these part numbers, in words: what is kept frozen with its time out, the rest with its last day. */
function useLotsOf(materials: readonly string[]): { value: string; text: string }[] {
  const frozen = (useQuery(frozenLotsQuery).data?.rows ?? []).filter(({ part }) => materials.includes(part.number));
  const found = useQueries({ queries: materials.map(lotsQuery) }).flatMap(({ data }) => data?.rows ?? []);
  const others = found.filter(
    ({ id, part, onHand }) => onHand > 0 && materials.includes(part.number) && !frozen.some((lot) => lot.id === id),
  );
  return [
    ...frozen.map(({ id, code, part, over, outMinutes, outTimeHours }) => ({
      value: id,
      text: `${code} ${part.number}, out ${(outMinutes / 60).toFixed(1)} of ${outTimeHours} h${over ? `, NOT GOOD: ${over}` : ''}`,
    })),
    ...others.map(({ id, code, part, expiresOn }) => ({
      value: id,
      text: `${code} ${part.number}${expiresOn ? `, not from ${expiresOn} on` : ''}`,
    })),
  ];
}

/** The lots of resin, film, grease and the like that went into it, by their labels; none is ticked beforehand. */
export function MaterialField(props: {
  materials: readonly string[];
  value: readonly string[];
  onChange: (lotIds: string[]) => void;
}) {
  return (
    <CheckboxList
      name="lotIds"
      label={`Lots used of ${props.materials.join(', ')}`}
      value={props.value}
      onChange={props.onChange}
      choices={useLotsOf(props.materials)}
      isRequired
    />
  );
}
