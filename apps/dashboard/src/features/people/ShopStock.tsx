import { DecimalField } from '../../ui/DecimalField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import type { ShopFieldsProps } from './shop-draft.ts';

/** When stock counts as idle. */
export function StockAge({ draft, onChange, at }: ShopFieldsProps) {
  return (
    <FieldGroup title="Idle stock" note="By the last issue; what was never issued, by the day it came.">
      <DecimalField
        name={`${at}slowAfterMonths`}
        label="Stock is slow after no issue for"
        unit="months"
        decimals={0}
        value={draft.slowAfterMonths}
        onChange={(slowAfterMonths) => onChange({ slowAfterMonths })}
        isRequired
      />
      <DecimalField
        name={`${at}deadAfterMonths`}
        label="and dead after"
        unit="months"
        decimals={0}
        value={draft.deadAfterMonths}
        onChange={(deadAfterMonths) => onChange({ deadAfterMonths })}
        isRequired
      />
    </FieldGroup>
  );
}
