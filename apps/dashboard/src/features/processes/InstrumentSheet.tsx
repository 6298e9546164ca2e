import { processOperations } from '@hubwright/contracts/processes/operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { DateText, DueText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { CalibrationHistory } from './CalibrationHistory.tsx';
import { CalibrateForm } from './calibrate-instrument.tsx';
import { calibrationMark, doubtsOf, type Instrument } from './instruments.ts';
import { StudyList } from './StudyList.tsx';

/** One instrument: may it be used, until when, and its next calibration. */
export function InstrumentSheet({ instrument, today }: { instrument: Instrument; today: string }) {
  const mayCalibrate = useMay(processOperations.calibrateInstrument);
  const [isOpen, setOpen] = useState(false);
  const close = () => setOpen(false);
  const mark = calibrationMark(instrument, today);
  const facts = [
    ['Kind', instrument.kind.replaceAll('-', ' ')],
    ['Where it is kept', instrument.location || 'not told'],
    ['Calibrated', <DateText key="on" date={instrument.calibratedOn} />],
    [
      'Known to',
      doubtsOf(instrument).length > 0
        ? `${doubtsOf(instrument)
            .map(({ uncertainty, unit }) => `± ${uncertainty} ${unit}`)
            .join(', ')} (k = 2)`
        : 'not on record',
    ],
    ['Last good day', <DueText key="due" date={instrument.calibrationDueOn} />],
  ] as const;
  return (
    <section className="sheet stack" aria-label={instrument.tag}>
      <div className="row between">
        <h2>
          <span className="code">{instrument.tag}</span> {instrument.title}
        </h2>
        <StateMark {...mark} />
      </div>
      <dl className="facts">
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {mayCalibrate ? (
        <div className="row no-print">
          <Button weight={mark.state === 'passed' ? 'plain' : 'next'} onPress={() => setOpen(true)}>
            Record a calibration
          </Button>
        </div>
      ) : (
        <p className="soft">An inspector or a manager records its calibrations.</p>
      )}
      <CalibrationHistory instrumentId={instrument.id} unit={instrument.unit} />
      <StudyList instrument={instrument} />
      <Dialog title={`Calibration of ${instrument.tag}`} isOpen={isOpen} onClose={close} width="wide">
        <CalibrateForm key={instrument.version} instrument={instrument} onDone={close} onCancel={close} />
      </Dialog>
    </section>
  );
}
