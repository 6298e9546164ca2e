import { type CellValue, csvText } from '@hubwright/rules/csv';
import { useEffect, useState } from 'react';
import { Button } from './Button.tsx';
import { saveFile } from './csv.ts';
import { useRest } from './Pages.tsx';

/** Reads page after page until the list has no more, then saves: what leaves is the whole list, not what was scrolled to. */
function useExport(save: () => void): { isRunning: boolean; start: () => void } {
  const { more, isReading, hasFailed } = useRest();
  const [isAsked, setAsked] = useState(false);
  const isRunning = isAsked && !hasFailed;
  useEffect(() => {
    if (!isAsked || isReading) return;
    if (more && !hasFailed) {
      more();
      return;
    }
    setAsked(false);
    if (!hasFailed) save();
  });
  return { isRunning, start: () => setAsked(true) };
}

interface ExportButtonProps<Row> {
  /** Says what the rows are; used for the file name. */
  caption: string;
  columns: readonly { readonly header: string; readonly value: (row: Row) => CellValue }[];
  rows: readonly Row[];
}

/** The list as a CSV file, the whole of it: within a `PagesFrame` it is read to its end first. */
export function ExportButton<Row>({ caption, columns, rows }: ExportButtonProps<Row>) {
  const save = () => {
    const header = columns.map((column) => column.header);
    const lines = rows.map((row) => columns.map((column) => column.value(row)));
    saveFile(`${caption.toLowerCase().replace(/[^a-z0-9]+/g, '-')}.csv`, csvText(header, lines));
  };
  const whole = useExport(save);
  return (
    <Button weight="quiet" isDisabled={rows.length === 0} isPending={whole.isRunning} onPress={whole.start}>
      Export CSV
    </Button>
  );
}
