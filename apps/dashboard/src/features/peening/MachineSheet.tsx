import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { peeningPaperOperations } from '@hubwright/contracts/peening/paper-operations';
import { controlLimits } from '@hubwright/rules/flow';
import { useState } from 'react';
import { addressOf } from '../../api/address.ts';
import { useMay } from '../../api/me.ts';
import { InstantText } from '../../format/values.tsx';
import { Button, LinkButton } from '../../ui/Button.tsx';
import { ControlChart } from '../../ui/pictures/ControlChart.tsx';
import { SaturationCurve } from '../../ui/pictures/SaturationCurve.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Machine, Setup } from './peening.ts';
import { QualifySetup } from './qualify-setup.tsx';

function SetupFacts({ setup }: { setup: Setup }) {
  return (
    <details open={setup.isCurrent}>
      <summary>
        <strong>{setup.program}</strong>{' '}
        <span className="soft">
          {setup.mediaSize}, media lot {setup.mediaLot}
        </span>{' '}
        {setup.failedLot ? (
          <StateMark state="stop" word={`strips of ${setup.failedLot} failed since`} />
        ) : (
          <StateMark
            state={setup.isCurrent ? 'passed' : 'note'}
            word={setup.isCurrent ? 'qualified' : 'qualified anew since'}
          />
        )}{' '}
        <span className="soft small">
          {setup.qualifiedBy.displayName}, <InstantText instant={setup.qualifiedAt} />
        </span>
      </summary>
      <div className="stack">
        <div className="row between">
          <p className="small">
            {setup.parameters.map(({ name, value, unit }) => `${name} ${value} ${unit}`.trim()).join(', ')}
          </p>
          <LinkButton
            href={addressOf(peeningPaperOperations.peeningSetupPdf, { setupId: setup.id })}
            target="_blank"
            aria-label={`${setup.program} on paper`}
          >
            On paper
          </LinkButton>
        </div>
        <div className="pictures-row">
          {setup.areas.map((area) => (
            <SaturationCurve key={area.name} area={area} />
          ))}
        </div>
      </div>
    </details>
  );
}

/** How the strips of one area went from lot to lot, within the band and within what the machine does by itself. */
function IntensityChart({ machine, area }: { machine: Machine; area: Setup['areas'][number] }) {
  const strips = machine.history.filter((one) => one.area === area.name);
  if (strips.length < 2) return null;
  const limits = controlLimits(strips.map(({ arcHeight }) => Number(arcHeight)));
  return (
    <ControlChart
      title={`Arc heights of ${area.name}, lot by lot`}
      points={strips.map(({ lot, when, arcHeight }) => ({ label: `${lot} ${when}`, value: arcHeight }))}
      band={{ low: area.low, high: area.high }}
      limits={limits}
      unit={area.unit}
    />
  );
}

/** One machine: what it is qualified for, with curves, and how its strips went. */
export function MachineSheet({ machine, signer }: { machine: Machine; signer: Signer }) {
  const mayQualify = useMay(peeningOperations.qualifySetup);
  const [isOpen, setOpen] = useState(false);
  const current = machine.setups.filter(({ isCurrent }) => isCurrent);
  const areas = current
    .flatMap((setup) => setup.areas)
    .filter((area, index, all) => all.findIndex(({ name }) => name === area.name) === index);
  return (
    <section className="sheet stack" aria-label={machine.code}>
      <div className="row between">
        <h2>
          <span className="code">{machine.code}</span> {machine.title}
        </h2>
        {mayQualify ? <Button onPress={() => setOpen(true)}>Qualify a program</Button> : null}
      </div>
      {machine.setups.length === 0 ? (
        <p className="soft">Qualified for nothing yet: no lot can begin with it.</p>
      ) : null}
      {machine.setups.map((setup) => (
        <SetupFacts key={setup.id} setup={setup} />
      ))}
      <div className="pictures-row">
        {areas.map((area) => (
          <IntensityChart key={area.name} machine={machine} area={area} />
        ))}
      </div>
      {isOpen ? <QualifySetup machine={machine} signer={signer} onClose={() => setOpen(false)} /> : null}
    </section>
  );
}
