import { StateMark } from '../../../ui/StateMark.tsx';
import { BakeMark } from '../BakeMark.tsx';
import { BakeActions } from '../bake-actions.tsx';
import { BakeChart, type BakeDraft } from './BakeChart.tsx';
import type { SheetFieldsProps } from './sheet-form.ts';

/** The clocks of the bake, the way to put it into the oven, and what was charted. */
export function BakeFields({ about, draft, onChange }: SheetFieldsProps<'bake', BakeDraft>) {
  const { step, spec } = about;
  return (
    <>
      {step.bake ? (
        <div className="row between">
          <BakeMark clock={step.bake} />
          {step.state === 'open' ? (
            <BakeActions
              which={{ stepId: step.id }}
              equipmentKind={step.equipmentKind}
              clock={step.bake}
              name={step.title}
            />
          ) : null}
        </div>
      ) : (
        <StateMark state="hold" word="nothing is signed as plated yet" />
      )}
      <BakeChart spec={spec} clock={step.bake} draft={draft} onChange={onChange} />
    </>
  );
}
