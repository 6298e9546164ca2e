export { Cells, Twice } from './cells.ts';
export { ImportsModule } from './imports.module.ts';
export { previewTable } from './preview-table.ts';
export { keepStaged, type ReadTable } from './stage-table.command.ts';
export {
  type Ask,
  type Plan,
  planned,
  type RowChange,
  stagedTable,
  type Table,
  type TableRow,
  type Writing,
} from './table.ts';
export { TableUploads } from './table-uploads.ts';
export { takeOver } from './take-over.ts';
export { templateText } from './template-text.ts';
