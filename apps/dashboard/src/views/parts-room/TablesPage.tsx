import { importKinds, importLimits } from '@hubwright/contracts/imports/kinds';
import { importOperations } from '@hubwright/contracts/imports/operations';
import { useState } from 'react';
import { z } from 'zod';
import { useMay, useMe } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { AcceptOpeningStock } from '../../features/imports/accept-opening-stock.tsx';
import { ChooseTable } from '../../features/imports/ChooseTable.tsx';
import { type ImportDone, ImportsDone } from '../../features/imports/ImportsDone.tsx';
import { TablePreview } from '../../features/imports/TablePreview.tsx';
import { WholeLists } from '../../features/imports/WholeLists.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { PagesFrame } from '../../ui/Pages.tsx';

const address = z.object({ kind: z.enum(importKinds).catch('parts'), table: z.string().catch('') });

/** Tables come in above, and go out below. */
export function TablesPage() {
  const [{ kind, table }, setAddress] = useAddress(address);
  const me = useMe();
  const done = usePages(importOperations.listImports, {});
  const mayBring = useMay(importOperations.applyImport);
  const mayAccept = useMay(importOperations.acceptOpeningStock);
  const mayTake = useMay(importOperations.exportTable);
  const [accepting, setAccepting] = useState<ImportDone>();
  const close = () => setAddress({ table: '' });
  return (
    <div className="stack">
      {mayBring ? (
        <section className="sheet stack">
          <h2>Bring a table in</h2>
          <ChooseTable
            kind={kind}
            kinds={importKinds}
            at={{ send: `/api/imports/${kind}`, template: `/api/import-templates/${kind}` }}
            mostRows={importLimits.rows}
            onKind={(chosen) => setAddress({ kind: chosen, table: '' })}
            onSent={(id) => setAddress({ table: id })}
          />
          {table ? <TablePreview key={table} whose="shop" importId={table} onApplied={close} onClose={close} /> : null}
        </section>
      ) : null}
      <section className="sheet stack">
        <h2>Taken over so far</h2>
        <PagesFrame of={done}>
          <ImportsDone rows={done.rows} mayAccept={mayAccept} onAccept={setAccepting} />
        </PagesFrame>
      </section>
      {mayTake ? (
        <section className="sheet stack">
          <h2>Take whole lists out, as CSV</h2>
          <WholeLists />
        </section>
      ) : null}
      {accepting ? <AcceptOpeningStock of={accepting} signer={me} onClose={() => setAccepting(undefined)} /> : null}
    </div>
  );
}
