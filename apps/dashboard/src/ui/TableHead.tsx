import { flexRender, type Header, type Table } from '@tanstack/react-table';

const sortWords = { asc: 'ascending', desc: 'descending' } as const;

function HeadCell<Row>({ header }: { header: Header<Row, unknown> }) {
  const { column } = header;
  const sorted = column.getIsSorted();
  const text = flexRender(column.columnDef.header, header.getContext());
  return (
    <th
      scope="col"
      className={column.columnDef.meta?.isNumber ? 'number' : ''}
      aria-sort={sorted ? sortWords[sorted] : 'none'}
    >
      {column.getCanSort() ? (
        <button type="button" className="sort" onClick={column.getToggleSortingHandler()}>
          {text}
          <svg viewBox="0 0 8 10" aria-hidden="true" className={sorted || 'unsorted'}>
            <path d="M4 0 8 4H0z" className="up" />
            <path d="M4 10 0 6h8z" className="down" />
          </svg>
        </button>
      ) : (
        text
      )}
    </th>
  );
}

export function TableHead<Row>({ table }: { table: Table<Row> }) {
  return (
    <thead>
      {table.getHeaderGroups().map((group) => (
        <tr key={group.id}>
          {group.headers.map((header) => (
            <HeadCell key={header.id} header={header} />
          ))}
        </tr>
      ))}
    </thead>
  );
}
