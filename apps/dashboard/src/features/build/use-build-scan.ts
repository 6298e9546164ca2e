import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import type { ProblemError } from '../../api/problem.ts';
import { say } from '../../ui/toasts.tsx';
import { type BuildSheet, scanPlan } from './build-sheet.ts';

/** A scan at the bench: new parts from the tray go in, inspected ones from the rack go back in. */
export function useBuildScan(sheet: BuildSheet) {
  const install = useCommand(kitsOperations.installFromTray);
  const reuse = useCommand(kitsOperations.reuseFromRack);
  const [refused, setRefused] = useState<string>();
  const [problem, setProblem] = useState<ProblemError | null>(null);
  const scan = (code: string) => {
    const lotCode = code.trim().toUpperCase();
    const plan = scanPlan(sheet, lotCode);
    setProblem(null);
    setRefused(plan.kind === 'no' ? plan.why : undefined);
    if (plan.kind === 'no') return true;
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
  return { scan, refused, problem };
}
