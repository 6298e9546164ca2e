import { Checkbox } from '../../../ui/Checkbox.tsx';
import { HeatPicture } from '../../../ui/pictures/HeatPicture.tsx';
import type { HeatAsked } from '../../../ui/pictures/heat-scale.ts';
import { TextField } from '../../../ui/TextField.tsx';
import { chartFrom, unitDoubt } from './chart-text.ts';

/** A chart as it is being written down. */
export interface ChartDraft {
  readonly chart: string;
  readonly unitChecked: boolean;
}
export const noChart: ChartDraft = { chart: '', unitChecked: false };

interface ChartFieldProps {
  readonly label: string;
  readonly title: string;
  readonly asked: HeatAsked;
  readonly draft: ChartDraft;
  readonly onChange: (draft: ChartDraft) => void;
}

/** The chart line by line, drawn against what is asked for while it is written; a unit in doubt asks to be looked at again. */
export function ChartField({ label, title, asked, draft, onChange }: ChartFieldProps) {
  const points = chartFrom(draft.chart);
  const isDrawn = points !== null && points.length > 1 && isForward(points);
  const doubt = isDrawn ? unitDoubt(points, asked) : undefined;
  const columns = asked.vacuum
    ? 'date, time, temperature, vacuum, such as 2026-03-01 12:20 180 25'
    : 'date, time, temperature, such as 2026-03-01 12:20 350';
  return (
    <>
      <TextField
        name="sheet/chart"
        label={label}
        hint={`A line each: ${columns}`}
        lines={6}
        value={draft.chart}
        onChange={(chart) => onChange({ chart, unitChecked: false })}
        isRequired
      />
      {points === null ? <p className="small">A line says something else than {columns}.</p> : null}
      {doubt ? (
        <Checkbox isSelected={draft.unitChecked} onChange={(unitChecked) => onChange({ ...draft, unitChecked })}>
          I looked at the recorder again: it writes {asked.unit}
        </Checkbox>
      ) : null}
      {isDrawn ? <HeatPicture title={title} asked={asked} points={points} /> : null}
    </>
  );
}

function isForward(points: readonly { at: string }[]): boolean {
  return points.every(({ at }, index) => index === 0 || at > (points[index - 1]?.at ?? ''));
}
