import { unitOperations } from '@hubwright/contracts/units/operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { Suspense, useState } from 'react';
import { useMay, useMe } from '../../api/me.ts';
import { UnitDirectives } from '../../features/directives/UnitDirectives.tsx';
import { NextDueSheet } from '../../features/due-dates/NextDueSheet.tsx';
import { ReadButton, ReadSerial, type Unread } from '../../features/units/confirm-identity.tsx';
import { EstablishTimes } from '../../features/units/establish-times.tsx';
import { Intervals } from '../../features/units/Intervals.tsx';
import { PartsOfPart } from '../../features/units/PartsOfPart.tsx';
import { TakeHistory } from '../../features/units/TakeHistory.tsx';
import { TimesAsOf } from '../../features/units/TimesAsOf.tsx';
import { UnitKeeping } from '../../features/units/UnitKeeping.tsx';
import { UnitPapers } from '../../features/units/UnitPapers.tsx';
import { TimesTable, VisitTable } from '../../features/units/UnitTables.tsx';
import { UnitTree } from '../../features/units/UnitTree.tsx';
import { nameOf, unitQuery } from '../../features/units/units.ts';
import { LossTable } from '../../features/vendors/LossTable.tsx';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { Button } from '../../ui/Button.tsx';
import { Link } from '../../ui/Link.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import styles from './front-desk.module.css';

export function UnitPage() {
  const { unitId = '' } = useParams({ strict: false }) as { unitId?: string };
  const unit = useSuspenseQuery(unitQuery(unitId)).data;
  const me = useMe();
  const mayConfirm = useMay(unitOperations.confirmIdentity);
  const mayEstablish = useMay(unitOperations.establishTimes);
  const [read, setRead] = useState<Unread>();
  const [isTiming, setTiming] = useState(false);
  const what = unit.model?.designation ?? `${unit.kind.replaceAll('-', ' ')} ${unit.partNumber}`;
  const isUnit = unit.kind === 'assembly' && unit.model !== null;
  return (
    <>
      <ViewHead
        title={`${unit.maker} ${what}`}
        question={`${nameOf(unit)}: what is it made of, and where has it been?`}
      >
        {unit.joinedInto ? (
          <p>
            The serial read on it is on record: it is{' '}
            <Link href={`/units/${unit.joinedInto.id}`}>serial {unit.joinedInto.serial}</Link>, where its history goes
            on.
          </p>
        ) : null}
        {unit.serial === null && !unit.joinedInto ? (
          <div className="row">
            <StateMark state="hold" word="serial not readable yet" />
            {mayConfirm ? <ReadButton part={unit} onRead={setRead} /> : null}
          </div>
        ) : null}
      </ViewHead>
      <div className="stack">
        <div className={isUnit ? styles.halves : 'stack'}>
          <section className="sheet stack" aria-labelledby="made-of">
            <div className="row between">
              <h2 id="made-of">{isUnit ? 'Made of' : 'Sits in'}</h2>
              <PartsOfPart part={unit} />
            </div>
            <UnitTree
              unit={unit}
              confirm={(part) => (mayConfirm ? <ReadButton part={part} onRead={setRead} /> : null)}
            />
          </section>
          {isUnit ? (
            <section className="sheet stack" aria-labelledby="next-due">
              <h2 id="next-due">Next due</h2>
              <NextDueSheet unitId={unit.id} />
            </section>
          ) : null}
        </div>
        {isUnit ? (
          <section className="sheet stack" aria-labelledby="directives">
            <h2 id="directives">Directives</h2>
            <UnitDirectives of={{ unitId: unit.id }} />
          </section>
        ) : null}
        <section className="sheet stack" aria-labelledby="times">
          <div className="row between">
            <h2 id="times">Times</h2>
            {mayEstablish ? <Button onPress={() => setTiming(true)}>Record times from a paper</Button> : null}
          </div>
          <TimesAsOf itemId={unit.id} />
          <details>
            <summary>What papers said ({unit.times.length})</summary>
            <TimesTable times={unit.times} />
          </details>
        </section>
        {isUnit ? (
          <section className="sheet stack" aria-labelledby="keeping">
            <h2 id="keeping">Use, age and storage</h2>
            <UnitKeeping itemId={unit.id} />
          </section>
        ) : null}
        {unit.kind === 'assembly' ? (
          <section className="sheet stack" aria-labelledby="aircraft">
            <h2 id="aircraft">On aircraft</h2>
            <Intervals itemId={unit.id} />
          </section>
        ) : null}
        <section className="sheet stack" aria-labelledby="visits">
          <h2 id="visits">Visits</h2>
          <VisitTable visits={unit.workOrders} />
        </section>
        {isUnit ? <LossTable of={{ unitId: unit.id }} title="Lost at vendors" /> : null}
        <section className="sheet stack" aria-labelledby="papers">
          <div className="row between">
            <h2 id="papers">Releases, documents and papers</h2>
            <TakeHistory itemId={unit.id} />
          </div>
          <Suspense fallback={<Skeleton lines={3} />}>
            <UnitPapers itemId={unit.id} />
          </Suspense>
        </section>
      </div>
      {isTiming ? <EstablishTimes item={unit} signer={me} onClose={() => setTiming(false)} /> : null}
      {read ? <ReadSerial part={read} signer={me} onClose={() => setRead(undefined)} /> : null}
    </>
  );
}
