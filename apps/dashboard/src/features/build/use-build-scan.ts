import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import type { ProblemError } from '../../api/problem.ts';
import { say } from '../../ui/toasts.tsx';
import { type BuildSheet, type SheetLine, scanPlan } from './build-sheet.ts';

/** A scan at the bench: new parts from the tray go in, inspected ones from the rack go back in; of as-needed ones it is asked how much. */
export function useBuildScan(sheet: BuildSheet, chosen: readonly SheetLine[]) {
  const install = useCommand(kitsOperations.installFromTray);
  const reuse = useCommand(kitsOperations.reuseFromRack);
  const [refused, setRefused] = useState<string>();
  const [problem, setProblem] = useState<ProblemError | null>(null);
  const [asNeeded, setAsNeeded] = useState<{ line: SheetLine; lotCode: string }>();
  const scan = (code: string) => {
    const lotCode = code.trim().toUpperCase();
    const plan = scanPlan(sheet, { code: lotCode, chosen });
    setProblem(null);
    setRefused(plan.kind === 'no' ? plan.why : undefined);
    if (plan.kind === 'no') return true;
    if (plan.kind === 'install' && plan.line.minimum !== null) {
      setAsNeeded({ line: plan.line, lotCode });
      return true;
    }
    const command = plan.kind === 'install' ? install : reuse;
    command.mutate(
      { input: { kitId: plan.kitId, lineId: plan.line.lineId, lotCode } },
      {
        onSuccess: () => say(`${plan.line.part.number} is in at ${plan.line.position}.`),
        onError: setProblem,
      },
    );
    return true;
  };
  return { scan, refused, problem, asNeeded, forgetAsNeeded: () => setAsNeeded(undefined) };
}
