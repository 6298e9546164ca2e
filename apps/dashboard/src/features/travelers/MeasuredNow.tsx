import { useQuery } from '@tanstack/react-query';
import type { KeyboardEvent } from 'react';
import { BladeWidths } from './BladeWidths.tsx';
import { dimensionsQuery } from './dimensions.ts';
import { MeasureEntries } from './MeasureEntries.tsx';
import { StationGrid } from './StationGrid.tsx';
import { TapEntries } from './TapEntries.tsx';
import type { Entries, Measure, Step, Traveler } from './traveler.ts';

/** Enter goes on to the next box: a caliper that types its reading ends it with Enter. In the last box it stays. */
function goOn(event: KeyboardEvent<HTMLDivElement>): void {
  if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
  event.preventDefault();
  const boxes = [...event.currentTarget.querySelectorAll('input')];
  boxes[boxes.indexOf(event.target) + 1]?.focus();
}

/** Values of a step as they are read: by blade station in a grid, by zone on the blade, and the rest one below the other. */
export function MeasuredNow(props: {
  traveler: Traveler;
  step: Step;
  entries: Entries;
  onChange: (entries: Entries) => void;
}) {
  const { traveler, step, entries, onChange } = props;
  const { measures } = step;
  const { data } = useQuery({
    ...dimensionsQuery(traveler.workOrder.id),
    enabled: measures.some(({ dimension }) => dimension !== null),
  });
  const rows = data?.parts.find(({ travelerId }) => travelerId === traveler.id)?.rows ?? [];
  const stations = measures.filter(({ station }) => station !== null);
  const zones = measures.filter(({ zone }) => zone !== null);
  const inGrid = new Set<Measure>([...(stations.length > 3 ? stations : []), ...zones]);
  const rest = measures.filter((measure) => !inGrid.has(measure));
  const shared = { all: measures, entries, onChange };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: only listens to what its boxes hear
    <div className="stack" onKeyDown={goOn}>
      <BladeWidths measures={measures} entries={entries} />
      {stations.length > 3 ? <StationGrid {...shared} measures={stations} rows={rows} /> : null}
      {zones.length > 0 ? <TapEntries {...shared} measures={zones} /> : null}
      {rest.length > 0 ? <MeasureEntries {...shared} measures={rest} /> : null}
    </div>
  );
}
