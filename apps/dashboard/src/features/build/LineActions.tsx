import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Button } from '../../ui/Button.tsx';
import { FormProblem } from '../../ui/FormProblem.tsx';
import { say } from '../../ui/toasts.tsx';
import { type BuildSheet, type SheetLine, takesMore } from './build-sheet.ts';
import { TakeOut } from './take-out.tsx';
import { UseAsNeeded } from './use-as-needed.tsx';

type Asked =
  | { readonly what: 'use'; readonly lotCode: string }
  | { readonly what: 'out'; readonly lot: SheetLine['lots'][number] };

/** For fingers without a scanner: this position's piece from the tray or the rack goes in, or what is in comes out again. */
export function LineActions({ sheet, line }: { sheet: BuildSheet; line: SheetLine }) {
  const install = useCommand(kitsOperations.installFromTray);
  const reuse = useCommand(kitsOperations.reuseFromRack);
  const [asked, setAsked] = useState<Asked>();
  const inTray = sheet.tray.find((lot) => lot.lineId === line.lineId);
  const inRack = sheet.rack.find((lot) => lot.lineId === line.lineId && lot.state === 'accepted');
  const ids = { kitId: line.kitId, lineId: line.lineId };
  const done = { onSuccess: () => say(`${line.part.number} is in at ${line.position}.`) };
  const installFrom = (lotCode: string) =>
    line.minimum === null ? install.mutate({ input: { ...ids, lotCode } }, done) : setAsked({ what: 'use', lotCode });
  const close = () => setAsked(undefined);
  return (
    <div className="stack tight">
      <div className="row">
        {inTray && takesMore(line, 'install') ? (
          <Button isPending={install.isPending} onPress={() => installFrom(inTray.lotCode)}>
            Tray: {inTray.lotCode}
          </Button>
        ) : null}
        {inRack && takesMore(line, 'reuse') && line.source !== 'new' ? (
          <Button
            isPending={reuse.isPending}
            onPress={() => reuse.mutate({ input: { ...ids, lotCode: inRack.lotCode } }, done)}
          >
            Rack: {inRack.lotCode}
          </Button>
        ) : null}
        {line.lots.map((lot) => (
          <Button
            key={lot.movementId}
            weight="quiet"
            aria-label={`Take out ${lot.lotCode} of ${line.position}`}
            onPress={() => setAsked({ what: 'out', lot })}
          >
            Take out
          </Button>
        ))}
      </div>
      <FormProblem problem={install.error ?? reuse.error} />
      {asked?.what === 'use' ? <UseAsNeeded line={line} lotCode={asked.lotCode} onClose={close} /> : null}
      {asked?.what === 'out' ? <TakeOut line={line} lot={asked.lot} onClose={close} /> : null}
    </div>
  );
}
