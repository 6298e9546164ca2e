import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useCommand } from '../../api/command.ts';
import { Button } from '../../ui/Button.tsx';
import { FormProblem } from '../../ui/FormProblem.tsx';
import { say } from '../../ui/toasts.tsx';
import type { BuildSheet, SheetLine } from './build-sheet.ts';

/** For fingers without a scanner: take this position's piece from the tray, or put the inspected old one back. */
export function LineActions({ sheet, line }: { sheet: BuildSheet; line: SheetLine }) {
  const install = useCommand(kitsOperations.installFromTray);
  const reuse = useCommand(kitsOperations.reuseFromRack);
  const inTray = sheet.tray.find((lot) => lot.lineId === line.lineId);
  const inRack = sheet.rack.find((lot) => lot.lineId === line.lineId && lot.state === 'accepted');
  if (line.missing === 0) return null;
  const ids = { kitId: line.kitId, lineId: line.lineId };
  const done = { onSuccess: () => say(`${line.part.number} is in at ${line.position}.`) };
  return (
    <div className="stack tight">
      <div className="row">
        {inTray ? (
          <Button
            isPending={install.isPending}
            onPress={() => install.mutate({ input: { ...ids, lotCode: inTray.lotCode } }, done)}
          >
            Tray: {inTray.lotCode}
          </Button>
        ) : null}
        {inRack && line.source !== 'new' ? (
          <Button
            isPending={reuse.isPending}
            onPress={() => reuse.mutate({ input: { ...ids, lotCode: inRack.lotCode } }, done)}
          >
            Rack: {inRack.lotCode}
          </Button>
        ) : null}
      </div>
      <FormProblem problem={install.error ?? reuse.error} />
    </div>
  );
}
