import { type Pass, passesOf, placesOf } from '@hubwright/rules/torque';
import { CheckboxList } from '../../../ui/Checkbox.tsx';
import { DecimalField } from '../../../ui/DecimalField.tsx';
import { FieldGroup } from '../../../ui/FieldGroup.tsx';
import type { SheetFieldsProps } from './sheet-form.ts';
import { TorqueGroupFields } from './TorqueGroupFields.tsx';
import { TorquePass } from './TorquePass.tsx';
import type { TorqueDraft } from './torque-draft.ts';

type Props = SheetFieldsProps<'torque', TorqueDraft>;

/** Group by group and pass by pass as the manual has them; what is out of sequence cannot be ticked. */
export function TorqueFields(props: Props) {
  const { spec } = props.about;
  const passes = passesOf(spec).map((pass, index) => ({ pass, index }));
  const shown = ({ pass, index }: { pass: Pass; index: number }) => (
    <TorquePass key={index} {...props} pass={pass} index={index} />
  );
  return (
    <div className="stack">
      {spec.groups.map((group) => (
        <TorqueGroupFields key={group.name} {...props} group={group}>
          {passes.filter(({ pass }) => pass.group.name === group.name && !pass.afterCycling).map(shown)}
        </TorqueGroupFields>
      ))}
      {spec.cycles > 0 ? <Again {...props}>{passes.filter(({ pass }) => pass.afterCycling).map(shown)}</Again> : null}
      <Safetied {...props} />
    </div>
  );
}

/** Torqued again only once it was cycled as often as the manual says. */
function Again({ about, draft, onChange, children }: Props & { children: React.ReactNode }) {
  return (
    <section aria-label="Again after cycling">
      <FieldGroup
        title="Again after cycling"
        note={`Cycled ${about.spec.cycles} times at least before anything is torqued again.`}
      >
        <DecimalField
          name="sheet/cycled"
          label="Cycled on air"
          unit="times"
          decimals={0}
          value={draft.cycled}
          onChange={(cycled) => onChange({ ...draft, cycled })}
          isRequired
        />
      </FieldGroup>
      {children}
    </section>
  );
}

/** One tick for each place that is safetied; there is none for all of them. */
function Safetied({ about, draft, onChange }: Props) {
  return about.spec.groups.map((group) => {
    if (!group.safety) return null;
    const places = placesOf(group).toSorted((a, b) => a.localeCompare(b, 'en', { numeric: true }));
    const others = draft.safetied.filter((place) => !places.includes(place));
    return (
      <CheckboxList
        key={group.name}
        label={`Safetied with ${group.safety}, each as you see it`}
        value={draft.safetied.filter((place) => places.includes(place))}
        onChange={(ticked) => onChange({ ...draft, safetied: [...others, ...ticked] })}
        choices={places.map((place) => ({ value: place, text: place }))}
        isRequired
      />
    );
  });
}
