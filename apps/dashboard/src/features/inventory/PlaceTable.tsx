import type { ReactNode } from 'react';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { type Place, placeKey } from './places.ts';

const columns: readonly Column<Place>[] = [
  { id: 'title', header: 'Place', value: (place) => place.title },
  { id: 'label', header: 'Called', value: (place) => place.label },
  { id: 'walk', header: 'Walk', value: (place) => place.walk, isNumber: true },
  { id: 'parts', header: 'Part numbers', value: (place) => place.parts, isNumber: true },
  {
    id: 'lots',
    header: 'Lots',
    value: (place) => place.lots,
    cell: (place) => (place.lots === 0 ? <span className="soft">empty</span> : place.lots),
    isNumber: true,
  },
];

/** Bins in the order one walks by them, then whatever else holds something. */
export function PlaceTable(props: { places: readonly Place[]; hrefOf: (place: Place) => string; tools: ReactNode }) {
  return (
    <DataTable
      caption="Places"
      rows={props.places}
      columns={columns}
      rowKey={placeKey}
      rowHref={props.hrefOf}
      tools={props.tools}
      empty={<EmptyState title="No bin yet">Add the first bin; accepted parts are put away there.</EmptyState>}
    />
  );
}
