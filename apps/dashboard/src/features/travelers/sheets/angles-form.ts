import { judgeAngles, sayAngles } from '@hubwright/rules/angles';
import { type AnglesDraft, AnglesFields, readingsOf } from './AnglesFields.tsx';
import { acceptedOf, shownOf } from './angles-asked.ts';
import type { SheetForm } from './sheet-form.ts';

export const anglesForm: SheetForm<'angles', AnglesDraft> = {
  empty: { cycles: '', angles: {} },
  Fields: AnglesFields,
  missing: 'the angles are not all read',
  entryOf(draft, about) {
    const [asked, application] = [shownOf(about), about.traveler.workOrder.application];
    if (!asked || !application || !/^\d{1,3}$/.test(draft.cycles)) return undefined;
    const readings = readingsOf(draft, asked);
    if (readings.some(({ angle }) => angle === '')) return undefined;
    return { kind: 'angles', applicationId: application.id, cycles: Number(draft.cycles), readings };
  },
  judge(entry, about) {
    const asked = acceptedOf(about);
    if (!asked) return undefined;
    const verdict = judgeAngles(entry, asked);
    return { said: sayAngles(entry, asked, verdict), reasons: verdict.reasons };
  },
};
