import { studyOperations } from '@hubwright/contracts/processes/study-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { MeansChart, RangeChart, SpreadBars } from '../../ui/pictures/StudyPictures.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Instrument } from './instruments.ts';
import { RecordStudy } from './record-study.tsx';
import { gaugeWords, type Study, studiesQuery } from './studies.ts';

const figures = ['repeatability', 'reproducibility', 'gauge', 'parts', 'total'] as const;

/** Both methods side by side: they differ a little on the same readings, and which was used is always said. */
function Figures({ study: { averageAndRange, anova, unit } }: { study: Study }) {
  return (
    <table>
      <caption className="only-heard">Spread by method, in {unit}</caption>
      <thead>
        <tr>
          <th scope="col">Spread in {unit}</th>
          <th scope="col">By ranges</th>
          <th scope="col">By variance</th>
        </tr>
      </thead>
      <tbody>
        {figures.map((name) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{averageAndRange ? averageAndRange[name].toFixed(5) : 'beyond its tables'}</td>
            <td>{anova[name].toFixed(5)}</td>
          </tr>
        ))}
        <tr>
          <th scope="row">sizes told apart</th>
          <td>{averageAndRange?.categories ?? ''}</td>
          <td>{anova.categories}</td>
        </tr>
        <tr>
          <th scope="row">of the tolerance</th>
          <td>{averageAndRange?.percentOfTolerance ? `${averageAndRange.percentOfTolerance.toFixed(1)} %` : ''}</td>
          <td>{anova.percentOfTolerance ? `${anova.percentOfTolerance.toFixed(1)} %` : 'no tolerance given'}</td>
        </tr>
      </tbody>
    </table>
  );
}

function OneStudy({ study }: { study: Study }) {
  const { averageAndRange, anova } = study;
  const { percent } = averageAndRange ?? anova;
  return (
    <details className="stack">
      <summary>
        {study.title}, <DateText date={study.heldOn} /> <StateMark {...gaugeWords(percent.gauge)} />
      </summary>
      <div className="stack">
        <p className="small soft">
          Kept by {study.recordedBy}.{' '}
          {anova.interaction.pooled
            ? 'Appraisers and parts do not act on each other beyond chance.'
            : 'Some appraisers read some parts differently: look at the lines that cross.'}
        </p>
        <SpreadBars percent={percent} />
        {averageAndRange ? <RangeChart cells={study.cells} limit={averageAndRange.rangeLimit} /> : null}
        <MeansChart cells={study.cells} />
        <Figures study={study} />
      </div>
    </details>
  );
}

/** How much of what is measured is the gauge and its people, study by study. */
export function StudyList({ instrument }: { instrument: Instrument }) {
  const rows = useQuery(studiesQuery(instrument.id)).data?.rows ?? [];
  const mayRecord = useMay(studyOperations.recordGaugeStudy);
  const [isOpen, setOpen] = useState(false);
  if (rows.length === 0 && !mayRecord) return null;
  return (
    <section className="stack tight" aria-labelledby="studies">
      <h3 id="studies">Gauge studies</h3>
      {rows.length === 0 ? (
        <p className="small soft">None yet: repeatability and reproducibility are not known.</p>
      ) : null}
      {rows.map((study) => (
        <OneStudy key={study.id} study={study} />
      ))}
      {mayRecord ? (
        <div className="row no-print">
          <Button onPress={() => setOpen(true)}>Record a study</Button>
        </div>
      ) : null}
      {isOpen ? <RecordStudy instrument={instrument} onClose={() => setOpen(false)} /> : null}
    </section>
  );
}
