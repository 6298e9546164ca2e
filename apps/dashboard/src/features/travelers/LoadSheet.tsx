import { loadOperations } from '@hubwright/contracts/work-orders/load-operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { countOf } from '../../format/numbers.ts';
import { processWords } from '../../format/process-words.ts';
import { AgeText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Link } from '../../ui/Link.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { say } from '../../ui/toasts.tsx';
import { BakeMark } from './BakeMark.tsx';
import { judgedLoad, LoadBake } from './LoadBake.tsx';
import { justNow, LateEntry, latenessInput } from './late-entry.tsx';
import styles from './loads.module.css';
import type { Load, LoadPart } from './loads.ts';
import { ProcessForm } from './ProcessForm.tsx';
import { type Filled, fieldsLeft, formInput } from './process-form.ts';
import { noBake } from './sheets/bake-form.ts';
import { TakeOut } from './take-out.tsx';

function PartRow({ part, onOut }: { part: LoadPart; onOut: (() => void) | undefined }) {
  return (
    <li className={styles.part}>
      <span>
        <Link href={`/travelers/${part.travelerId}?step=${part.stepId}`}>{part.travelerNumber}</Link>{' '}
        <strong>{part.position}</strong> <span className="code">{part.serial}</span>{' '}
        <span className="soft small">
          {part.workOrderNumber}, {part.customer}: {part.title}
        </span>
        {part.bake ? (
          <span className={styles.clock}>
            <BakeMark clock={part.bake} />
          </span>
        ) : null}
        {part.blocked ? (
          <span className="small">
            {' '}
            <StateMark state="hold" word={part.blocked} />
          </span>
        ) : null}
      </span>
      {onOut ? (
        <Button weight="quiet" onPress={onOut} aria-label={`Take out ${part.travelerNumber}`}>
          Take out
        </Button>
      ) : null}
    </li>
  );
}

/** One open load: what is in it, what holds it, and the one signature for all of it. */
export function LoadSheet({ load, signer }: { load: Load; signer: Signer }) {
  const maySign = useMay(loadOperations.signLoad);
  const [out, setOut] = useState<LoadPart>();
  const [isSigning, setSigning] = useState(false);
  const [filled, setFilled] = useState<Filled>({});
  const [lateness, setLateness] = useState(justNow);
  const left = fieldsLeft(load.form, filled);
  const [bake, setBake] = useState(noBake);
  const { entry, bad, missing } = judgedLoad(load, bake);
  const blocked = load.parts.filter((part) => part.blocked !== null).length;
  return (
    <section className={styles.load} aria-label={load.number}>
      <div className="row between">
        <h2>
          {load.number} <span className="soft">{load.equipment}</span>{' '}
          {load.shut ? <StateMark state="stop" word={load.shut} /> : null}
        </h2>
        <span className="soft small">
          {processWords[load.process]}, {countOf(load.parts.length, 'part')}, put together by{' '}
          {load.startedBy.displayName} <AgeText instant={load.startedAt} /> ago
        </span>
      </div>
      <ul className={styles.parts}>
        {load.parts.map((part) => (
          <PartRow key={part.stepId} part={part} onOut={maySign ? () => setOut(part) : undefined} />
        ))}
      </ul>
      {maySign ? (
        <>
          {load.sheet?.kind === 'bake' ? (
            <LoadBake load={load} spec={load.sheet} draft={bake} onChange={setBake} />
          ) : null}
          <ProcessForm fields={load.form} filled={filled} onChange={setFilled} />
          <LateEntry value={lateness} onChange={setLateness} />
          <div className="row actions">
            <Button
              weight="next"
              isDisabled={blocked > 0 || bad.length > 0 || missing !== '' || left.length > 0}
              onPress={() => setSigning(true)}
            >
              All of it is done and good: sign
            </Button>
            {blocked > 0 ? (
              <p className="small">
                {countOf(blocked, 'part')} in it cannot be signed: take {blocked === 1 ? 'it' : 'them'} out, or wait.
              </p>
            ) : null}
            {left.length > 0 ? <p className="small">Not entered yet: {left.join(', ')}.</p> : null}
            {missing ? <p className="small">{missing}</p> : null}
          </div>
        </>
      ) : null}
      {out ? <TakeOut load={load} part={out} onClose={() => setOut(undefined)} /> : null}
      {isSigning ? (
        <SignCommand
          op={loadOperations.signLoad}
          input={{
            ...{ loadId: load.id, form: formInput(load.form, filled), ...latenessInput(lateness) },
            ...(entry ? { sheet: entry } : {}),
          }}
          version={load.version}
          signer={signer}
          process={load.process}
          onClose={() => setSigning(false)}
          onSigned={({ signOffIds }) => {
            say(`${load.number} is signed for ${countOf(signOffIds.length, 'part')}.`);
            setSigning(false);
          }}
        >
          <p>
            {load.number}, {load.equipment}: {load.parts.map(({ travelerNumber }) => travelerNumber).join(', ')}
          </p>
          {load.form.length > 0 ? (
            <p className="small">{load.form.map(({ name }) => `${name}: ${filled[name]}`).join(', ')}</p>
          ) : null}
        </SignCommand>
      ) : null}
    </section>
  );
}
