import { DateField } from '../../ui/DateField.tsx';

export interface CalibrationDraft {
  readonly calibratedOn: string;
  readonly calibrationDueOn: string;
}

/** Both dates as the certificate has them; the second is the last good day. */
export function CalibrationFields<D extends CalibrationDraft>(props: { draft: D; onChange: (draft: D) => void }) {
  const { draft, onChange } = props;
  return (
    <div className="field-grid">
      <DateField
        name="calibratedOn"
        label="Calibrated on"
        value={draft.calibratedOn}
        onChange={(calibratedOn) => onChange({ ...draft, calibratedOn })}
        isRequired
      />
      <DateField
        name="calibrationDueOn"
        label="Good until"
        hint="The last day it may be used"
        value={draft.calibrationDueOn}
        onChange={(calibrationDueOn) => onChange({ ...draft, calibrationDueOn })}
        isRequired
      />
    </div>
  );
}
