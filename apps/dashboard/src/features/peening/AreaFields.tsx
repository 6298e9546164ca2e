import { stripKinds } from '@hubwright/contracts/manuals/measures';
import { RuleError } from '@hubwright/rules/errors';
import { fitSaturation } from '@hubwright/rules/peening';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { SaturationCurve } from '../../ui/pictures/SaturationCurve.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { OtherStrips } from './OtherStrips.tsx';
import { stripsFrom } from './peening.ts';

export interface AreaDraft {
  /** Tells areas apart while they have no name. */
  readonly key: number;
  readonly name: string;
  readonly strip: (typeof stripKinds)[number];
  readonly low: string;
  readonly high: string;
  readonly unit: string;
  readonly form: 'exponential' | 'rational' | 'stretched';
  readonly exposure: string;
  /** As typed: a time and an arc height a line. */
  readonly strips: string;
}
export const emptyArea = (key: number): AreaDraft => ({
  key,
  ...{ name: '', strip: 'A', low: '', high: '', unit: 'in', form: 'exponential', exposure: '', strips: '' },
});

const forms = [
  { value: 'exponential', text: 'a (1 − e^−bt)' },
  { value: 'rational', text: 'a t / (b + t)' },
  { value: 'stretched', text: 'a (1 − e^−bt^c)' },
] as const;

/** The curve through what is typed so far, and what it says; nothing while there is none. */
export function fittedDraft(draft: AreaDraft) {
  const strips = stripsFrom(draft.strips);
  if (!strips || strips.length < 4) return undefined;
  const points = strips.map(({ time, arcHeight }) => ({ time: Number(time), arcHeight: Number(arcHeight) }));
  try {
    const fit = fitSaturation(points, { form: draft.form });
    const { a = 0, b = 0, c } = fit.parameters;
    const shown = { ...draft, strips, ...fit, parameters: { a, b, c: c ?? null }, warnings: fit.problems };
    return { area: shown, words: `${fit.intensity.toFixed(5)} ${draft.unit} at ${fit.saturationTime.toFixed(2)}` };
  } catch (error) {
    if (error instanceof RuleError) return undefined;
    throw error;
  }
}

/** One area: its band, its strips, and the curve as it comes. */
export function AreaFields(props: { at: number; draft: AreaDraft; onChange: (draft: AreaDraft) => void }) {
  const { draft } = props;
  const set =
    <K extends keyof AreaDraft>(key: K) =>
    (value: AreaDraft[K]) =>
      props.onChange({ ...draft, [key]: value });
  const at = `areas/${props.at}`;
  const fitted = fittedDraft(draft);
  const unread = draft.strips !== '' && stripsFrom(draft.strips) === null;
  return (
    <div className="stack">
      <FieldGroup title={`Area ${props.at + 1}`}>
        <TextField name={`${at}/name`} label="Area" value={draft.name} onChange={set('name')} isRequired />
        <Select
          name={`${at}/strip`}
          label="Strip"
          value={draft.strip}
          onChange={set('strip')}
          choices={stripKinds.map((value) => ({ value, text: value }))}
        />
        <DecimalField
          name={`${at}/low`}
          label="Band from"
          unit={draft.unit}
          decimals={5}
          value={draft.low}
          onChange={set('low')}
          isRequired
        />
        <DecimalField
          name={`${at}/high`}
          label="Band to"
          unit={draft.unit}
          decimals={5}
          value={draft.high}
          onChange={set('high')}
          isRequired
        />
        <DecimalField
          name={`${at}/exposure`}
          label="Exposure parts get"
          decimals={3}
          value={draft.exposure}
          onChange={set('exposure')}
          isRequired
        />
        <Select
          name={`${at}/form`}
          label="Form of the curve"
          value={draft.form}
          onChange={set('form')}
          choices={forms}
        />
      </FieldGroup>
      <TextField
        name={`${at}/strips`}
        label="Strips"
        hint={unread ? 'Each line is a time and a net arc height' : 'A line each: time, net arc height'}
        lines={6}
        value={draft.strips}
        onChange={set('strips')}
        isRequired
      />
      {fitted ? <SaturationCurve area={fitted.area} /> : null}
      {fitted && Number.isFinite(fitted.area.intensity) && fitted.area.intensity > 0 ? (
        <OtherStrips area={draft} net={fitted.area.intensity.toFixed(5)} />
      ) : null}
    </div>
  );
}
