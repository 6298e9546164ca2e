import { RuleError } from '@hubwright/rules/errors';
import { netArcHeight } from '@hubwright/rules/peening';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { LimitGauge } from '../../ui/pictures/LimitGauge.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { OtherStrips } from './OtherStrips.tsx';
import { bandOf, type Lot, unitOf } from './peening.ts';

type Area = Lot['spec']['areas'][number];
interface Reading {
  readonly before: string;
  readonly after: string;
}
/** Both readings of each strip by area, as they are taken, and the batch the strips come from. */
export interface Strips {
  readonly batch: string;
  readonly readings: Readonly<Record<string, Reading>>;
}
export const noStrips: Strips = { batch: '', readings: {} };

export function readingsOf({ areas }: Lot['spec'], { batch, readings }: Strips) {
  return areas.map(({ name }) => ({
    ...{ area: name, before: readings[name]?.before ?? '', after: readings[name]?.after ?? '' },
    ...(batch.trim() ? { batch: batch.trim() } : {}),
  }));
}

/** The net arc height of an area, or why there is none. */
function netOf(area: Area, { readings }: Strips): { net?: string; wrong?: string } {
  const { before = '', after = '' } = readings[area.name] ?? {};
  if (before === '' || after === '') return {};
  try {
    return { net: netArcHeight({ strip: area.strip, unit: unitOf(area), before, after }) };
  } catch (error) {
    if (error instanceof RuleError) return { wrong: error.code === 'pre-bowed' ? error.message : '' };
    throw error;
  }
}

/** Every strip is read and flat enough. */
export function areRead({ areas }: Lot['spec'], strips: Strips): boolean {
  return areas.every((area) => netOf(area, strips).net !== undefined);
}

/** The net arc heights in words, as they are signed. */
export function netWords({ areas }: Lot['spec'], strips: Strips): string {
  return areas.map((area) => `${area.name} ${netOf(area, strips).net} ${area.unit}`).join(', ');
}

/** Two readings for each area, the net arc height between its band as it comes. Every box starts empty. */
export function StripFields(props: {
  spec: Lot['spec'];
  name: string;
  strips: Strips;
  onChange: (strips: Strips) => void;
}) {
  const { strips, onChange } = props;
  const put = (area: string, changes: Partial<Reading>) => {
    const reading = { before: '', after: '', ...strips.readings[area], ...changes };
    onChange({ ...strips, readings: { ...strips.readings, [area]: reading } });
  };
  return (
    <div className="stack">
      <TextField
        name={`${props.name}/0/batch`}
        label="Batch of the strips"
        value={strips.batch}
        onChange={(batch) => onChange({ ...strips, batch })}
        size={16}
        isCode
      />
      {props.spec.areas.map((area, index) => (
        <fieldset key={area.name} className="field-group">
          <legend>
            {area.name}{' '}
            <span className="soft">
              {bandOf(area)}
              {area.positions.length > 0 ? `, at station ${area.positions.join(', ')}` : ''}
            </span>
          </legend>
          <div className="row">
            <DecimalField
              name={`${props.name}/${index}/before`}
              label={`Before, ${area.name}`}
              unit={area.unit}
              decimals={5}
              value={strips.readings[area.name]?.before ?? ''}
              onChange={(before) => put(area.name, { before })}
              isRequired
            />
            <DecimalField
              name={`${props.name}/${index}/after`}
              label={`After, ${area.name}`}
              unit={area.unit}
              decimals={5}
              value={strips.readings[area.name]?.after ?? ''}
              onChange={(after) => put(area.name, { after })}
              isRequired
            />
            <Net area={area} strips={strips} />
          </div>
        </fieldset>
      ))}
    </div>
  );
}

function Net({ area, strips }: { area: Area; strips: Strips }) {
  const { net, wrong } = netOf(area, strips);
  const { low, high, unit, strip } = area;
  return (
    <div className="stack tight" role="status">
      <LimitGauge value={net ?? null} low={low} high={high} unit={unit} />
      {net ? (
        <span>
          arc height <strong className="quantity">{net}</strong> {unit} {strip}
        </span>
      ) : null}
      {wrong ? <StateMark state="stop" word={wrong} /> : null}
      {net && Number(net) > 0 ? <OtherStrips area={area} net={net} /> : null}
    </div>
  );
}
