import { EquipmentField } from './EquipmentField.tsx';
import { MaterialField } from './MaterialField.tsx';
import type { Step } from './traveler.ts';
import type { Used } from './used-things.ts';

/** Which tank or test system, which lots of material; nothing where the step asks for neither. */
export function UsedFields({ step, used, onChange }: { step: Step; used: Used; onChange: (used: Used) => void }) {
  return (
    <>
      {step.equipmentKind ? (
        <EquipmentField
          kind={step.equipmentKind}
          value={used.equipmentId}
          onChange={(equipmentId) => onChange({ ...used, equipmentId })}
        />
      ) : null}
      {step.materials.length > 0 ? (
        <MaterialField
          materials={step.materials}
          value={used.lotIds}
          onChange={(lotIds) => onChange({ ...used, lotIds })}
        />
      ) : null}
    </>
  );
}
