import { readTable, type TableRead } from './read-table.ts';

/** The rows of a file someone sent, read off the request thread: a spreadsheet is unpacked and parsed whole. */
export default function run(bytes: Uint8Array): Promise<TableRead> {
  return readTable(bytes);
}
