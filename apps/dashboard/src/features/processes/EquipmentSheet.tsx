import { equipmentOperations } from '@hubwright/contracts/processes/equipment-operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { EquipmentLog } from './EquipmentLog.tsx';
import { EquipmentState, useMarks } from './EquipmentState.tsx';
import { dueWords, type Equipment, kindWords, limitWords } from './equipment.ts';
import { ChangeEquipment } from './equipment-form.tsx';
import { RecordAddition } from './record-addition.tsx';
import { RecordReadings } from './record-readings.tsx';

type Doing = 'read' | 'add' | 'change';

function Checks({ equipment }: { equipment: Equipment }) {
  const marks = useMarks(equipment);
  return (
    <ul className="lines small">
      {marks.map(({ check, standing, mark }) => (
        <li key={check.name}>
          <span>
            <strong>{check.name}</strong> {limitWords(check)}{' '}
            <span className="soft">
              {dueWords(check)}; {check.source}
            </span>
          </span>
          <span>
            {standing.value === null || check.confirm ? null : (
              <strong className="quantity">
                {standing.value} {check.unit}{' '}
              </strong>
            )}
            <StateMark {...mark} />{' '}
            {standing.takenAt ? (
              <span className="soft">
                <InstantText instant={standing.takenAt} />
              </span>
            ) : null}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** One tank or test system: each check with its last result, what to do next, and its log. */
export function EquipmentSheet({
  equipment,
  signer,
  isOpen,
}: {
  equipment: Equipment;
  signer: Signer;
  isOpen: boolean;
}) {
  const [mayRead, mayChange] = [
    useMay(equipmentOperations.recordReadings),
    useMay(equipmentOperations.changeEquipment),
  ];
  const [doing, setDoing] = useState<Doing>();
  const [isShown, setShown] = useState(isOpen);
  const isTank = equipment.kind.endsWith('-tank');
  const close = () => setDoing(undefined);
  return (
    <section className="sheet stack" aria-label={equipment.code}>
      <div className="row between">
        <h2>
          <span className="code">{equipment.code}</span> {equipment.title}{' '}
          <span className="soft small">{kindWords[equipment.kind]}</span>
        </h2>
        <EquipmentState equipment={equipment} />
      </div>
      <Checks equipment={equipment} />
      <div className="row actions">
        {mayRead && equipment.inService ? (
          <Button weight={equipment.shut ? 'next' : 'plain'} onPress={() => setDoing('read')}>
            {isTank ? 'Record an analysis' : 'Record the check of the day'}
          </Button>
        ) : null}
        {mayRead && isTank && equipment.inService ? (
          <Button onPress={() => setDoing('add')}>Log an addition</Button>
        ) : null}
        <Button weight="quiet" onPress={() => setShown(!isShown)} aria-expanded={isShown}>
          {isShown ? 'Hide the log' : 'Log and charts'}
        </Button>
        {mayChange ? (
          <Button weight="quiet" onPress={() => setDoing('change')}>
            Change what is checked
          </Button>
        ) : null}
      </div>
      {isShown ? <EquipmentLog equipment={equipment} /> : null}
      {doing === 'read' ? <RecordReadings equipment={equipment} signer={signer} onClose={close} /> : null}
      {doing === 'add' ? <RecordAddition equipment={equipment} onClose={close} /> : null}
      {doing === 'change' ? <ChangeEquipment equipment={equipment} onClose={close} /> : null}
    </section>
  );
}
