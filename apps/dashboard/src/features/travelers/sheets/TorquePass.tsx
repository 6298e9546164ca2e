import { RuleError } from '@hubwright/rules/errors';
import { decimalsOf, type Pass, settingBand, settingComplaint } from '@hubwright/rules/torque';
import { Checkbox } from '../../../ui/Checkbox.tsx';
import { DecimalField } from '../../../ui/DecimalField.tsx';
import { NutCircle } from '../../../ui/pictures/NutCircle.tsx';
import { StateMark } from '../../../ui/StateMark.tsx';
import styles from './build-sheets.module.css';
import type { SheetFieldsProps } from './sheet-form.ts';
import { adapterGiven, adapterOf, nextPlace, passDraft, type TorqueDraft, withPass } from './torque-draft.ts';

type Props = SheetFieldsProps<'torque', TorqueDraft> & { pass: Pass; index: number };

/** What a rule says, or the sentence it refuses with. */
function told<T>(rule: () => T): T | string {
  try {
    return rule();
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    return error.message;
  }
}

/** The setting asked for with the adapter as it is given, and whether the one read gives it. */
function Setting({ about, draft, pass, index }: Props) {
  const { unit } = about.spec;
  const adapter = adapterOf(draft, pass.group.name);
  const given = adapterGiven(adapter);
  if (adapter.effect === null || (given && (given.lever === '' || given.length === '')))
    return <p className="soft">Say whether an adapter is on the wrench: the setting goes by it.</p>;
  const band = told(() => settingBand(pass, given, decimalsOf(pass.group)));
  const { setting } = passDraft(draft, index);
  const wrong = told(() => settingComplaint({ setting, adapter: given }, pass, { unit, path: '' }));
  return (
    <div className="stack tight" aria-live="polite">
      <p className="state-sentence">
        {typeof band === 'string' ? (
          <StateMark state="stop" word={band} />
        ) : (
          <>
            Set the wrench to{' '}
            <strong>
              {band.low} to {band.high} {unit}
            </strong>
          </>
        )}
      </p>
      {setting === '' ? null : (
        <p className="state-sentence">
          <StateMark state={wrong ? 'stop' : 'passed'} word={wrong ?? 'the torque asked for at the nut'} />
        </p>
      )}
    </div>
  );
}

/** One pass: the setting, then the places in their sequence, of which only the next can be ticked and only the last unticked. */
export function TorquePass(props: Props) {
  const { about, draft, onChange, pass, index } = props;
  const { setting, places } = passDraft(draft, index);
  const next = nextPlace(draft, about.spec);
  const isLast = draft.passes.findLastIndex((one) => one.places.length > 0) === index;
  const title = `${pass.group.name}, ${pass.title}`;
  const tick = (place: string, is: boolean) =>
    onChange(withPass(draft, index, { places: is ? [...places, place] : places.slice(0, -1) }));
  return (
    <fieldset className={styles.pass}>
      <legend>{pass.afterCycling ? title : pass.title}</legend>
      <Setting {...props} />
      <div className={styles.work}>
        <DecimalField
          name={`sheet/passes/${index}/setting`}
          label="Wrench set to"
          hint="As read on the wrench"
          unit={about.spec.unit}
          value={setting}
          onChange={(text) => onChange(withPass(draft, index, { setting: text }))}
          isRequired
        />
        <ol className={styles.places}>
          {pass.places.map((place) => (
            <li key={place}>
              <Checkbox
                isSelected={places.includes(place)}
                isDisabled={
                  places.includes(place)
                    ? !(isLast && places.at(-1) === place)
                    : !(next?.index === index && next.place === place)
                }
                onChange={(is) => tick(place, is)}
              >
                {place}
              </Checkbox>
            </li>
          ))}
        </ol>
        {pass.places.length >= 4 ? (
          <NutCircle
            title={title}
            sequence={pass.places.map((place) => Number(place.split(' ').at(-1)))}
            done={places.length}
            isOpen={next?.index === index}
          />
        ) : null}
      </div>
    </fieldset>
  );
}
