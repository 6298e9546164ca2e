import { bladesOf } from '@hubwright/rules/angles';
import { DecimalField } from '../../../ui/DecimalField.tsx';
import { Link } from '../../../ui/Link.tsx';
import { BladeAngles } from '../../../ui/pictures/BladeAngles.tsx';
import { StateMark } from '../../../ui/StateMark.tsx';
import { drawnOf, type Standing, shownOf, standingOfAngle } from './angles-asked.ts';
import { SheetGrid } from './SheetGrid.tsx';
import type { SheetFieldsProps } from './sheet-form.ts';

/** Angles as they are typed, by stop and blade. */
export interface AnglesDraft {
  readonly cycles: string;
  readonly angles: Readonly<Record<string, string>>;
}

const marks: Record<Standing, 'open' | 'passed' | 'stop'> = {
  'to read': 'open',
  inside: 'passed',
  outside: 'stop',
  'cannot be': 'stop',
};

/** Every reading the application asks for, in the order it is sent: stop by stop, blade by blade. */
export function readingsOf({ angles }: AnglesDraft, asked: NonNullable<ReturnType<typeof shownOf>>) {
  return asked.stops.flatMap(({ stop }) =>
    bladesOf(asked.blades).map((blade) => ({ blade, stop, angle: angles[`${stop} ${blade}`] ?? '' })),
  );
}

/** Why there is nothing to read: nobody set the application, or the manual has no angles for it. */
function NoAngles({ about }: Pick<SheetFieldsProps<'angles', AnglesDraft>, 'about'>) {
  const { id, number, application } = about.traveler.workOrder;
  return (
    <p>
      <StateMark state="stop" word="no angle is set" />{' '}
      {application
        ? `The manual has no angles for ${application.airframe}, ${application.position}.`
        : `Nobody knows which aircraft ${number} is for, and angles go by it.`}{' '}
      <Link href={`/work-orders/${id}`}>Set the application on {number}</Link>
    </p>
  );
}

/** Blade angles at the stops of the unit’s own application, judged and drawn while they are typed. */
export function AnglesFields({ about, draft, onChange }: SheetFieldsProps<'angles', AnglesDraft>) {
  const asked = shownOf(about);
  const { application } = about.traveler.workOrder;
  if (!asked || !application) return <NoAngles about={about} />;
  const readings = readingsOf(draft, asked);
  const cell = (reading: (typeof readings)[number]) => {
    const { standing, words } = standingOfAngle(reading, asked);
    const key = `${reading.stop} ${reading.blade}`;
    return {
      name: `sheet/readings/${readings.indexOf(reading)}/angle`,
      label: `Blade ${reading.blade}, ${reading.stop} stop, degrees`,
      value: reading.angle,
      onChange: (angle: string) => onChange({ ...draft, angles: { ...draft.angles, [key]: angle } }),
      mark: { state: marks[standing], word: words },
    };
  };
  return (
    <>
      <p>
        For <strong>{`${application.airframe}, ${application.engine}, ${application.position}`}</strong>, held at
        station {asked.station.at} {asked.station.unit}. Set a blade again and read again while it can be set.
      </p>
      <DecimalField
        name="sheet/cycles"
        label="Cycled on air before reading"
        hint={`${asked.cycles} times at least, stop to stop`}
        unit="times"
        decimals={0}
        value={draft.cycles}
        onChange={(cycles) => onChange({ ...draft, cycles })}
        isRequired
      />
      <SheetGrid
        caption="Blade angles, degrees"
        corner="Blade"
        columns={asked.stops.map(({ stop, low, high, spread }) => ({
          ...{ key: stop, head: `${stop} stop` },
          limits: `${low}° to ${high}°${spread === undefined ? '' : `, differ ${spread}°`}`,
        }))}
        rows={bladesOf(asked.blades).map((blade) => ({
          ...{ key: String(blade), head: String(blade) },
          cells: readings.filter((one) => one.blade === blade).map(cell),
        }))}
      />
      <BladeAngles title="Blade angles at the stops" blades={asked.blades} stops={drawnOf(readings, asked)} />
    </>
  );
}
