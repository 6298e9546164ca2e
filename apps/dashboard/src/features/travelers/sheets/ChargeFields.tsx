import { chargeMedia } from '@hubwright/contracts/manuals/charge-sheet';
import type { SheetOf } from '@hubwright/contracts/manuals/sheets';
import { chargeWanted } from '@hubwright/rules/charge';
import { RuleError } from '@hubwright/rules/errors';
import { unitText } from '@hubwright/rules/reading';
import { RadioList } from '../../../ui/Checkbox.tsx';
import { DecimalField } from '../../../ui/DecimalField.tsx';
import { LimitGauge } from '../../../ui/pictures/LimitGauge.tsx';
import { StateMark } from '../../../ui/StateMark.tsx';
import { SheetGroup } from './SheetGroup.tsx';
import type { SheetFieldsProps } from './sheet-form.ts';

/** A charge as it is being written down; the medium is nobody's until it is chosen. */
export interface ChargeDraft {
  readonly medium: (typeof chargeMedia)[number] | null;
  readonly temperature: string;
  readonly settledMinutes: string;
  readonly pressure: string;
}

const media = chargeMedia.map((medium) => ({ value: medium, text: medium }));

/** What the table asks for at the temperature typed, or why it has no answer. */
function Wanted({ spec, draft }: { spec: SheetOf<'charge'>; draft: ChargeDraft }) {
  if (draft.temperature === '') return <p className="soft">The pressure goes by the temperature: read it first.</p>;
  try {
    const { wanted, low, high } = chargeWanted(spec, draft.temperature);
    const value = /^-?\d+(\.\d+)?$/.test(draft.pressure) ? draft.pressure : null;
    return (
      <div className="row">
        <p>
          At {draft.temperature} {unitText(spec.temperatureUnit)} the table asks for{' '}
          <strong>
            {wanted} {spec.unit}
          </strong>
          , {low} to {high}
        </p>
        <LimitGauge value={value} low={low} high={high} unit={spec.unit} />
      </div>
    );
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    return (
      <p className="state-sentence">
        <StateMark state="stop" word={error.message} />
      </p>
    );
  }
}

/** What it was charged with, the temperature, and the gauge once it settled. */
export function ChargeFields({ about, draft, onChange }: SheetFieldsProps<'charge', ChargeDraft>) {
  const { spec } = about;
  const field = (key: 'temperature' | 'settledMinutes' | 'pressure') => ({
    ...{ name: `sheet/${key}`, value: draft[key], isRequired: true },
    onChange: (text: string) => onChange({ ...draft, [key]: text }),
  });
  const [least, most] = [spec.table[0]?.at, spec.table.at(-1)?.at];
  return (
    <SheetGroup title="Charge" note={`${spec.medium}, ± ${spec.tolerance} ${spec.unit} of the table.`}>
      <RadioList
        label="Charged with"
        value={draft.medium}
        onChange={(medium) => onChange({ ...draft, medium })}
        choices={media}
        isRequired
      />
      <div className="field-grid">
        <DecimalField
          label="Temperature"
          hint={`The table goes from ${least} to ${most}`}
          unit={unitText(spec.temperatureUnit)}
          {...field('temperature')}
        />
        <DecimalField
          label="Settled before it was read"
          hint={`${spec.settleMinutes} min are asked for`}
          unit="min"
          {...field('settledMinutes')}
        />
        <DecimalField label="Pressure" hint="As the gauge shows it" unit={spec.unit} {...field('pressure')} />
      </div>
      <div aria-live="polite">
        <Wanted spec={spec} draft={draft} />
      </div>
    </SheetGroup>
  );
}
