import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { Select } from '../../ui/Select.tsx';
import type { ShopFieldsProps } from './shop-draft.ts';

const guardBands = [
  { value: 'none', text: 'The limits of the manual as they are' },
  { value: 'uncertainty', text: 'Inside them by the whole doubt of the instrument' },
  { value: 'root-sum-square', text: 'Inside them by the root of the squares of span and doubt' },
  { value: 'managed-risk', text: 'Inside them so that at most 2 in 100 wrong ones pass' },
] as const;

/** How readings are judged beside the limits of the manual. */
export function Measuring({ draft, onChange, at }: ShopFieldsProps) {
  return (
    <FieldGroup
      title="Measuring"
      note="The doubt of an instrument is what its certificate says (k = 2). Beside each entry stands how much finer than the tolerance it measures."
    >
      <Select
        name={`${at}guardBand`}
        label="A reading is accepted by"
        value={draft.guardBand ?? 'none'}
        onChange={(guardBand) => onChange({ guardBand })}
        choices={guardBands}
        isRequired
      />
    </FieldGroup>
  );
}
