import type { SheetOf } from '@hubwright/contracts/manuals/sheets';
import { RuleError } from '@hubwright/rules/errors';
import { bandWords, fitProposed, packWords } from '@hubwright/rules/fit';
import { DecimalField } from '../../../ui/DecimalField.tsx';
import { StateMark } from '../../../ui/StateMark.tsx';
import { type FitDraft, type PlaceDraft, placeDraft, placeFitted } from './fit-draft.ts';
import { SheetGroup } from './SheetGroup.tsx';
import type { SheetFieldsProps } from './sheet-form.ts';

const capital = (name: string) => name.charAt(0).toUpperCase() + name.slice(1);

/** The pack a place wants once it is measured, and the fewest shims that make it. */
function Proposed({ spec, draft, place }: { spec: SheetOf<'fit'>; draft: FitDraft; place: string }) {
  const { measured, shims } = placeFitted(draft, place, spec);
  if (measured.some(({ value }) => value === ''))
    return <p className="soft">Measured whole, the shims are proposed here.</p>;
  try {
    const { pack, ...wanted } = fitProposed(spec, measured);
    return (
      <>
        <p>
          Shims wanted: <strong>{bandWords(wanted)}</strong> {spec.unit}
        </p>
        {pack ? (
          <p>
            Proposed: <strong>{packWords(pack)}</strong> {spec.unit}
          </p>
        ) : (
          <StateMark state="stop" word={`no pack of up to ${spec.mostPieces} shims lies inside: measure again`} />
        )}
        {shims.length > 0 ? <p className="soft">Fitted: {packWords(shims)}</p> : null}
      </>
    );
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    return <StateMark state="stop" word={error.message} />;
  }
}

/** One place: measured, the pack proposed, what was fitted, the trial after. */
function Place({ about, draft, onChange, place }: SheetFieldsProps<'fit', FitDraft> & { place: string }) {
  const { terms, shims, trial, unit } = about.spec;
  const mine = placeDraft(draft, place);
  const change = (more: Partial<PlaceDraft>) => onChange({ ...draft, [place]: { ...mine, ...more } });
  return (
    <SheetGroup title={capital(place)}>
      <div className="field-grid">
        {terms.map(({ name, low, high }) => (
          <DecimalField
            key={name}
            label={capital(name)}
            {...(low === undefined ? {} : { hint: `${low} to ${high}` })}
            unit={unit}
            value={mine.measured[name] ?? ''}
            onChange={(value) => change({ measured: { ...mine.measured, [name]: value } })}
            isRequired
          />
        ))}
      </div>
      <div className="state-sentence" aria-live="polite">
        <Proposed spec={about.spec} draft={draft} place={place} />
      </div>
      <div className="field-grid">
        {shims.map(({ thickness, part }) => (
          <DecimalField
            key={thickness}
            label={`Shims of ${thickness}`}
            hint={part ?? 'Whole pieces'}
            unit="pieces"
            decimals={0}
            value={mine.pieces[thickness] ?? ''}
            onChange={(pieces) => change({ pieces: { ...mine.pieces, [thickness]: pieces } })}
          />
        ))}
        <DecimalField
          label={capital(trial.name)}
          hint={`After fitting: ${trial.low} to ${trial.high}`}
          unit={trial.unit}
          value={mine.trial}
          onChange={(value) => change({ trial: value })}
          isRequired
        />
      </div>
    </SheetGroup>
  );
}

/** Place by place. Nothing in it is filled in beforehand: a proposal is read, and what was fitted is typed. */
export function FitFields(props: SheetFieldsProps<'fit', FitDraft>) {
  const { leaves, unit, places } = props.about.spec;
  return (
    <div className="stack">
      <p>
        {leaves.kind === 'preload' ? 'Preload' : 'End play'} {leaves.low} to {leaves.high} {unit}.
      </p>
      {places.map((place) => (
        <Place key={place} {...props} place={place} />
      ))}
    </div>
  );
}
