import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { scopeTitles } from '@hubwright/contracts/manuals/words';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { Amount, Quantity } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Link } from '../../ui/Link.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { AddApplication } from './add-application.tsx';
import { type Model, type ModelDetail, modelQuery } from './manuals.ts';
import { SetFlatRate } from './set-flat-rate.tsx';

function Applications({ model }: { model: ModelDetail }) {
  if (model.applications.length === 0)
    return <p className="soft">No aircraft yet: nothing says what it is fitted to.</p>;
  return (
    <ul className="lines">
      {model.applications.map((each) => (
        <li key={each.id}>
          <span>
            {each.airframe}, {each.engine}, {each.position}
            <span className="soft"> by {each.approval}</span>
          </span>
        </li>
      ))}
    </ul>
  );
}

function FlatRates({ model }: { model: ModelDetail }) {
  if (model.flatRates.length === 0)
    return <p className="soft">No flat rate yet: a quote has no labour to begin with.</p>;
  return (
    <ul className="lines">
      {model.flatRates.map((rate) => (
        <li key={rate.scope}>
          <span>{scopeTitles[rate.scope]}</span>
          <Quantity amount={(rate.labourMinutes / 60).toFixed(1)} unit="h" />
          <Amount minor={rate.labourMinor} />
        </li>
      ))}
    </ul>
  );
}

/** One model: the revision it goes by, the aircraft it is approved for, and its flat rates. */
export function ModelSheet({ row }: { row: Model }) {
  const model = useQuery(modelQuery(row.id)).data;
  const [open, setOpen] = useState<'application' | 'rate'>();
  const mayAdd = useMay(manualOperations.addApplication);
  const mayRate = useMay(manualOperations.setFlatRate);
  const close = () => setOpen(undefined);
  return (
    <section className="sheet stack" aria-label={row.designation}>
      <div>
        <h2>{row.designation}</h2>
        <p className="soft">
          {row.maker}, goes by <Link href={`/manuals?manual=${row.manual.id}`}>{row.manual.number}</Link>
          {row.currentRevision ? (
            <>
              {' '}
              <Link href={`/manual-revisions/${row.currentRevision.id}?model=${row.id}`}>
                revision {row.currentRevision.revision}
              </Link>
            </>
          ) : (
            ', which has no revision yet'
          )}
        </p>
      </div>
      <div className="row between">
        <h3>Aircraft</h3>
        {mayAdd ? <Button onPress={() => setOpen('application')}>Add an aircraft type</Button> : null}
      </div>
      {model ? <Applications model={model} /> : <Skeleton lines={3} />}
      <div className="row between">
        <h3>Flat rates</h3>
        {mayRate ? <Button onPress={() => setOpen('rate')}>Set a flat rate</Button> : null}
      </div>
      {model ? <FlatRates model={model} /> : <Skeleton lines={3} />}
      {open === 'application' ? <AddApplication model={row} onClose={close} /> : null}
      {open === 'rate' && model ? <SetFlatRate model={model} onClose={close} /> : null}
    </section>
  );
}
