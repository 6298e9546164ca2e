import { useState } from 'react';
import { type BuildSheet, drawn, positionGroups } from '../../features/build/build-sheet.ts';
import { ClearRack } from '../../features/build/clear-rack.tsx';
import { LineActions } from '../../features/build/LineActions.tsx';
import { PlacedList } from '../../features/build/PlacedList.tsx';
import { PositionTable } from '../../features/build/PositionTable.tsx';
import { useBuildScan } from '../../features/build/use-build-scan.ts';
import { Button } from '../../ui/Button.tsx';
import { Caution } from '../../ui/Caution.tsx';
import { PropellerFront } from '../../ui/pictures/PropellerFront.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { ScanField } from '../../ui/ScanField.tsx';
import styles from './bench.module.css';
import { RackActions } from './RackActions.tsx';

/** The unit from the front with its positions, the checklist, and the two lists that must run empty. */
export function BuildParts({ sheet, blades, mayBuild }: { sheet: BuildSheet; blades: number; mayBuild: boolean }) {
  const groups = positionGroups(sheet);
  const [group, setGroup] = useState<string>();
  const [isClearing, setClearing] = useState(false);
  const { scan, refused, problem } = useBuildScan(sheet);
  const linesOf = (key: string) => groups.find((each) => each.key === key)?.lines ?? [];
  const shown = group ? linesOf(group) : sheet.positions;
  const kitId = sheet.kits.find((kit) => kit.state === 'open')?.id;
  return (
    <>
      {mayBuild ? (
        <div className="stack tight">
          <ScanField label="Scan what you install: a lot from the tray or the rack" onScan={scan} />
          {refused ? <p role="alert">{refused}</p> : null}
          {problem ? <Refusal problem={problem} /> : null}
        </div>
      ) : null}
      <Caution>
        Cycling the pitch on air moves blades with force. Keep clear and follow the current approved manual; trained
        people only, under the shop’s and the local authority’s rules.
      </Caution>
      <div className={styles.beside}>
        <div className="stack">
          {blades >= 2 ? (
            <div className="sheet">
              <PropellerFront
                title="Positions seen from the front; choose one to see its parts"
                hub={drawn('hub', linesOf('hub'))}
                blades={Array.from({ length: blades }, (_, place) =>
                  drawn(`blade ${place + 1}`, linesOf(`blade ${place + 1}`)),
                )}
                {...(group ? { selected: group } : {})}
                onSelect={(key) => setGroup(key === group ? undefined : key)}
              />
            </div>
          ) : null}
          <PlacedList title="In the tray" lots={sheet.tray} emptyWords="the tray is empty" />
          <PlacedList
            title="In the rack"
            lots={sheet.rack}
            emptyWords="the rack is empty"
            isRack
            actions={(lot) => (kitId && mayBuild ? <RackActions kitId={kitId} lot={lot} /> : null)}
          />
          {kitId && mayBuild && sheet.rack.length > 0 ? (
            <Button onPress={() => setClearing(true)}>Clear the rack of what does not go back</Button>
          ) : null}
          {isClearing && kitId ? <ClearRack kitId={kitId} onClose={() => setClearing(false)} /> : null}
        </div>
        <div className="sheet stack">
          <h2>{group ? `Parts of ${group}` : 'All positions'}</h2>
          <PositionTable
            lines={shown}
            actions={(line) => (mayBuild ? <LineActions sheet={sheet} line={line} /> : null)}
          />
        </div>
      </div>
    </>
  );
}
