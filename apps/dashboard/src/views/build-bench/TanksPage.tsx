import { equipmentOperations } from '@hubwright/contracts/processes/equipment-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { z } from 'zod';
import { useMay, useMe } from '../../api/me.ts';
import { FrozenLots } from '../../features/inventory/FrozenLots.tsx';
import { DoubtList } from '../../features/processes/DoubtList.tsx';
import { EquipmentSheet } from '../../features/processes/EquipmentSheet.tsx';
import { type Equipment, equipmentQuery } from '../../features/processes/equipment.ts';
import { AddEquipment } from '../../features/processes/equipment-form.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Tabs } from '../../ui/Tabs.tsx';

const sheets = ['systems', 'tanks', 'freezer', 'doubts', 'answered'] as const;
const address = z.object({ sheet: z.enum(sheets).optional().catch(undefined), show: z.string().catch('') });

function Sheets({ rows, show, empty }: { rows: readonly Equipment[]; show: string; empty: string }) {
  const me = useMe();
  if (rows.length === 0)
    return <EmptyState title={empty}>An inspector, manager or administrator puts one on record.</EmptyState>;
  const first = [...rows].sort((a, b) => Number(b.code === show) - Number(a.code === show));
  return (
    <div className="stack">
      {first.map((one) => (
        <EquipmentSheet key={one.id} equipment={one} signer={me} isOpen={one.code === show} />
      ))}
    </div>
  );
}

/** Tanks with their analyses, test systems with their checks of the day, what is out of the freezer, and parts in doubt. */
export function TanksPage() {
  const me = useMe();
  const { rows } = useSuspenseQuery(equipmentQuery).data;
  const mayAdd = useMay(equipmentOperations.addEquipment);
  const [{ sheet, show }, setAddress] = useAddress(address);
  const [isAdding, setAdding] = useState(false);
  const tanks = rows.filter(({ kind }) => kind.endsWith('-tank'));
  const systems = rows.filter(({ kind }) => !kind.endsWith('-tank'));
  const asked = tanks.some(({ code }) => code === show) ? 'tanks' : 'systems';
  const doubts = rows.reduce((sum, { openDoubts }) => sum + openDoubts, 0);
  return (
    <div className="stack">
      {mayAdd ? (
        <div className="row actions">
          <Button onPress={() => setAdding(true)}>Put a tank or system on record</Button>
        </div>
      ) : null}
      <Tabs
        label="Tanks and checks"
        selected={sheet ?? asked}
        onSelect={(id) => setAddress({ sheet: id as (typeof sheets)[number] })}
        sheets={[
          {
            id: 'systems',
            title: `Checks of the day (${systems.length})`,
            content: <Sheets rows={systems} show={show} empty="No test system is on record" />,
          },
          {
            id: 'tanks',
            title: `Tanks (${tanks.length})`,
            content: <Sheets rows={tanks} show={show} empty="No tank is on record" />,
          },
          {
            id: 'freezer',
            title: 'Freezer',
            content: (
              <div className="sheet">
                <FrozenLots />
              </div>
            ),
          },
          {
            id: 'doubts',
            title: `Parts to answer for (${doubts})`,
            content: (
              <div className="sheet">
                <DoubtList show="open" signer={me} />
              </div>
            ),
          },
          {
            id: 'answered',
            title: 'All answers',
            content: (
              <div className="sheet">
                <DoubtList show="all" signer={me} />
              </div>
            ),
          },
        ]}
      />
      {isAdding ? <AddEquipment onClose={() => setAdding(false)} /> : null}
    </div>
  );
}
