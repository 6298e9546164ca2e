import type { ReactNode } from 'react';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Model } from './manuals.ts';

const columns: readonly Column<Model>[] = [
  { id: 'designation', header: 'Model', value: (model) => model.designation },
  { id: 'maker', header: 'Maker', value: (model) => model.maker },
  { id: 'kind', header: 'Kind', value: (model) => model.kind },
  { id: 'blades', header: 'Blades', value: (model) => model.bladeCount, isNumber: true },
  { id: 'material', header: 'Material', value: (model) => model.material },
  { id: 'pitch', header: 'Pitch', value: (model) => model.pitch.replaceAll('-', ' ') },
  { id: 'manual', header: 'Manual', value: (model) => model.manual.number },
  {
    id: 'revision',
    header: 'Goes by revision',
    value: (model) => model.currentRevision?.revision,
    cell: (model) => model.currentRevision?.revision ?? <StateMark state="stop" word="none: cannot be booked in" />,
  },
];

/** Propellers and governors the shop works on. */
export function ModelTable(props: {
  models: readonly Model[];
  hrefOf: (model: Model) => string;
  tools: ReactNode;
  isNarrow: boolean;
}) {
  const kept = ['designation', 'maker', 'manual', 'revision'];
  return (
    <DataTable
      caption="Models"
      rows={props.models}
      columns={props.isNarrow ? columns.filter(({ id }) => kept.includes(id)) : columns}
      rowKey={(model) => model.id}
      rowHref={props.hrefOf}
      tools={props.tools}
      empty={<EmptyState title="No model yet">Add the manual first; a model names the manual it goes by.</EmptyState>}
    />
  );
}
