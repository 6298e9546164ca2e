import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { trayOperations } from '@hubwright/contracts/kits/tray-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { z } from 'zod';
import { addressOf } from '../../api/address.ts';
import { useMay } from '../../api/me.ts';
import { binsQuery } from '../../features/inventory/lots.ts';
import { KitOpenItems } from '../../features/kits/KitOpenItems.tsx';
import { type Kit, kitQuery } from '../../features/kits/kit-detail.ts';
import { LineTable } from '../../features/kits/LineTable.tsx';
import { PullTable } from '../../features/kits/PullTable.tsx';
import { type Fetch, pullList, unpromised } from '../../features/kits/pull-list.ts';
import { ReleaseDialog } from '../../features/kits/release-reservation.tsx';
import { ReserveKit } from '../../features/kits/reserve-kit.tsx';
import { NeedByDialog } from '../../features/kits/set-need-by.tsx';
import { TrayList } from '../../features/kits/TrayList.tsx';
import { DueText } from '../../format/values.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { Button } from '../../ui/Button.tsx';
import { PrintLabel } from '../../ui/PrintLabel.tsx';
import { Progress } from '../../ui/Progress.tsx';
import { Tabs } from '../../ui/Tabs.tsx';
import { KitLinePanel } from './KitLinePanel.tsx';
import { KitScanning } from './KitScanning.tsx';
import styles from './parts-room.module.css';

const address = z.object({ sheet: z.enum(['pull', 'lines']).catch('pull'), line: z.string().catch('') });

/** How far the pulling is: lines that have from stock all they ask for, of all lines that ask for something. */
function PullProgress({ kit }: { kit: Kit }) {
  const pulled = kit.lines.filter(
    (line) => line.toPull === 0 && line.inTray + (line.source === 'reused' ? 0 : line.installed) > 0,
  ).length;
  const left = kit.lines.filter((line) => line.toPull > 0).length;
  return <Progress label="Lines pulled" done={pulled} of={pulled + left} />;
}

function KitHead({ kit }: { kit: Kit }) {
  const [isDating, setDating] = useState(false);
  const mayDate = useMay(kitsOperations.setNeedBy) && kit.state === 'open';
  return (
    <ViewHead
      title={`${kit.code} of ${kit.workOrder.number}`}
      question={`${kit.workOrder.unit}: what do I pull, and from which bin?`}
    >
      <div className="row">
        <span>
          Needed by <DueText date={kit.needBy} /> <span className="soft">for {kit.workOrder.customer}</span>
        </span>
        {mayDate ? <Button onPress={() => setDating(true)}>Change the date</Button> : null}
        <PrintLabel
          text="Label for the tray"
          hrefOf={(form) => addressOf(trayOperations.trayLabelPdf, { kitId: kit.id, form })}
        />
        <a href={`/api/kits/${kit.id}/audit-sheet`} target="_blank" rel="noreferrer">
          Audit sheet
        </a>
        {isDating ? <NeedByDialog kit={kit} onClose={() => setDating(false)} /> : null}
      </div>
    </ViewHead>
  );
}

/** The walk past the bins, and what has been put into the tray. */
function PullSheet({ kit, mayPull }: { kit: Kit; mayPull: boolean }) {
  const walk = useSuspenseQuery(binsQuery).data.rows.map((bin) => bin.code);
  const [released, setReleased] = useState<Fetch>();
  const isOpen = kit.state === 'open' && kit.lines.some((line) => line.toPull > 0);
  const mayReserve = useMay(kitsOperations.reserveKit) && isOpen;
  const canPromise = kit.lines.some((line) => unpromised(line) > 0);
  return (
    <div className="stack">
      {mayReserve ? <ReserveKit kit={kit} weight={canPromise ? 'next' : 'plain'} /> : null}
      <PullTable kitCode={kit.code} fetches={pullList(kit.lines, walk)} onRelease={mayPull ? setReleased : undefined} />
      <section className="stack">
        <h2>In the tray</h2>
        <TrayList kit={kit} mayMove={mayPull} />
      </section>
      {released ? <ReleaseDialog kitId={kit.id} promised={released} onClose={() => setReleased(undefined)} /> : null}
    </div>
  );
}

export function KitPage() {
  const { kitId = '' } = useParams({ strict: false }) as { kitId?: string };
  const kit = useSuspenseQuery(kitQuery(kitId)).data;
  const [{ sheet, line }, setAddress] = useAddress(address);
  const mayPull = useMay(kitsOperations.issueLot) && kit.state === 'open';
  const mayAdd = useMay(kitsOperations.explodeKit);
  const opened = kit.lines.find((each) => each.id === line);
  return (
    <>
      <KitHead kit={kit} />
      <div className="stack">
        {mayPull ? <KitScanning key={kit.id} kit={kit} /> : null}
        {kit.state === 'open' ? null : <p>This kit is {kit.state}; nothing is pulled for it any more.</p>}
        <KitOpenItems kit={kit} mayAdd={mayAdd} mayMove={mayPull} />
        <PullProgress kit={kit} />
        <div className={opened ? styles.beside : ''}>
          <div className="sheet">
            <Tabs
              label="Sheets of this kit"
              selected={sheet}
              onSelect={(id) => setAddress({ sheet: id as 'pull' | 'lines', line: '' })}
              sheets={[
                { id: 'pull', title: 'Pull list', content: <PullSheet kit={kit} mayPull={mayPull} /> },
                {
                  id: 'lines',
                  title: kit.lines.length === 1 ? 'The one line' : `All ${kit.lines.length} lines`,
                  content: (
                    <LineTable
                      kitCode={kit.code}
                      lines={kit.lines}
                      hrefOf={(row) => `/kits/${kit.id}?sheet=lines&line=${row.id}`}
                    />
                  ),
                },
              ]}
            />
          </div>
          {opened ? <KitLinePanel key={opened.id} kit={kit} line={opened} /> : null}
        </div>
      </div>
    </>
  );
}
