import { z } from 'zod';
import { type BuildSheet, rackStanding, type SheetLine, takesMore } from '../../features/build/build-sheet.ts';
import { GroupChoice } from '../../features/build/GroupChoice.tsx';
import { LineActions } from '../../features/build/LineActions.tsx';
import { PlacedList } from '../../features/build/PlacedList.tsx';
import { PositionTable } from '../../features/build/PositionTable.tsx';
import { drawn, positionGroups } from '../../features/build/position-groups.ts';
import { UseAsNeeded } from '../../features/build/use-as-needed.tsx';
import { useBuildScan } from '../../features/build/use-build-scan.ts';
import { useAddress } from '../../shell/use-address.ts';
import { Caution } from '../../ui/Caution.tsx';
import { PropellerFront } from '../../ui/pictures/PropellerFront.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { ScanField } from '../../ui/ScanField.tsx';
import { Select } from '../../ui/Select.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import styles from './bench.module.css';
import { RackLotActions, TrayLotActions } from './LotActions.tsx';
import { RackActions } from './RackActions.tsx';

const address = z.object({ group: z.string().catch(''), show: z.enum(['to-go', 'all']).catch('to-go') });
const shows = [
  { value: 'to-go', text: 'To go' },
  { value: 'all', text: 'All' },
] as const;

interface PartsProps {
  sheet: BuildSheet;
  blades: number;
  mayBuild: boolean;
}

/** The unit from the front, the checklist of its positions, and the two lists that must run empty. */
export function BuildParts({ sheet, blades, mayBuild }: PartsProps) {
  const [{ group, show }, setAddress] = useAddress(address);
  const groups = positionGroups(sheet);
  const linesOf = (key: string) => groups.find((each) => each.key === key)?.lines ?? [];
  const chosen = linesOf(group);
  const choose = (key: string) => setAddress({ group: key === group ? '' : key });
  const lines = (group ? chosen : sheet.positions).filter(
    (line) => show === 'all' || takesMore(line, line.inTray > 0 ? 'install' : 'reuse'),
  );
  return (
    <>
      <BuildHead sheet={sheet} blades={blades} mayBuild={mayBuild} chosen={chosen} />
      <div className={styles.positions}>
        <div className="sheet stack">
          {blades >= 2 ? (
            <PropellerFront
              title="Positions seen from the front; choose one to see its parts"
              hub={drawn('hub', linesOf('hub'))}
              blades={Array.from({ length: blades }, (_, place) =>
                drawn(`blade ${place + 1}`, linesOf(`blade ${place + 1}`)),
              )}
              {...(group ? { selected: group } : {})}
              onSelect={choose}
            />
          ) : null}
          <GroupChoice groups={groups} chosen={group} onChoose={choose} />
        </div>
        <div className="sheet stack">
          <h2>{group ? `Positions: ${group}` : 'All positions'}</h2>
          <PositionTable
            lines={lines}
            actions={(line) => (mayBuild ? <LineActions sheet={sheet} line={line} /> : null)}
            tools={
              <Select
                label="Show"
                value={show}
                onChange={(value) => setAddress({ show: value })}
                choices={shows}
                isRequired
              />
            }
          />
        </div>
      </div>
      <TrayAndRack sheet={sheet} mayBuild={mayBuild} />
    </>
  );
}

/** The scan field that is always alive, and beside it what can hurt. */
function BuildHead({ sheet, blades, mayBuild, chosen }: PartsProps & { chosen: readonly SheetLine[] }) {
  const { scan, refused, problem, asNeeded, forgetAsNeeded } = useBuildScan(sheet, chosen);
  return (
    <div className={styles.trays}>
      {mayBuild ? (
        <div className="stack tight">
          <ScanField label="Scan what you install: a lot from the tray or the rack" onScan={scan} />
          {refused ? <p role="alert">{refused}</p> : null}
          {problem ? <Refusal problem={problem} /> : null}
          {asNeeded ? <UseAsNeeded {...asNeeded} onClose={forgetAsNeeded} /> : null}
        </div>
      ) : null}
      <Caution>
        {blades >= 2
          ? 'Cycling the pitch on air moves blades with force, and springs are loaded as they go in. '
          : 'Springs are loaded as they go in, and the test bench turns under oil pressure. '}
        Keep clear and follow the current approved manual; trained people only, under the shop’s and the local
        authority’s rules.
      </Caution>
    </div>
  );
}

const rackMarks = {
  'may-go-back': { state: 'passed', word: 'may go back' },
  'not-inspected': { state: 'waiting', word: 'not inspected' },
  'always-new': { state: 'note', word: 'does not go back' },
} as const;

function TrayAndRack({ sheet, mayBuild }: { sheet: BuildSheet; mayBuild: boolean }) {
  const kitId = mayBuild ? sheet.kits.find((kit) => kit.state === 'open')?.id : undefined;
  return (
    <div className={styles.trays}>
      <PlacedList
        title="In the tray"
        lots={sheet.tray}
        emptyWords="the tray is empty"
        actions={(lot) => (kitId ? <TrayLotActions kitId={kitId} lot={lot} /> : null)}
      />
      <PlacedList
        title="In the rack"
        lots={sheet.rack}
        emptyWords="the rack is empty"
        mark={(lot) => <StateMark {...rackMarks[rackStanding(sheet, lot)]} />}
        actions={(lot) =>
          kitId && rackStanding(sheet, lot) !== 'always-new' ? <RackLotActions kitId={kitId} lot={lot} /> : null
        }
      >
        {kitId ? <RackActions sheet={sheet} kitId={kitId} /> : null}
      </PlacedList>
    </div>
  );
}
