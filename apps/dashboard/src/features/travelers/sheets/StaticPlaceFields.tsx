import type { StaticBalanceSheet } from '@hubwright/contracts/manuals/static-balance-sheet';
import type { StaticAdvice } from '@hubwright/rules/balance';
import { DecimalField } from '../../../ui/DecimalField.tsx';
import { FieldGroup } from '../../../ui/FieldGroup.tsx';
import { type Counts, keyOf, proposedAt } from './static-balance-draft.ts';

/** How many pieces are in each place, with its room and what is proposed. Nothing typed is none. */
export function StaticPlaceFields(props: {
  title: string;
  name: 'found' | 'placed';
  spec: StaticBalanceSheet;
  counts: Counts;
  advice?: StaticAdvice | string | undefined;
  onChange: (counts: Counts) => void;
}) {
  const { places, hardware, unit } = props.spec;
  const length = unit.split('-')[1] ?? '';
  return (
    <FieldGroup title={props.title} note="Nothing entered at a place is none there.">
      {places.flatMap(({ name, angle, pieces, stack }) =>
        hardware.map(({ part }) => {
          const key = keyOf(name, part);
          const proposed = proposedAt(props.advice, name, part);
          const room = `${angle}°, up to ${pieces}${stack ? ` or ${stack} ${length}` : ''}`;
          return (
            <DecimalField
              key={key}
              name={`sheet/${props.name}/${key}`}
              label={`${name}, ${part}`}
              hint={proposed > 0 ? `${room}; ${proposed} proposed` : room}
              decimals={0}
              value={props.counts[key] ?? ''}
              onChange={(text) => props.onChange({ ...props.counts, [key]: text })}
            />
          );
        }),
      )}
    </FieldGroup>
  );
}
