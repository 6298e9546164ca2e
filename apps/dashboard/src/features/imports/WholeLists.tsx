import { exportLists, exportTitles } from '@hubwright/contracts/imports/kinds';

/** Lists of any length as files, written by the server. What a page shows, its own “Export CSV” gives. */
export function WholeLists() {
  return (
    <ul className="lines">
      {exportLists.map((list) => (
        <li key={list}>
          <a href={`/api/exports/${list}`} download>
            {exportTitles[list]}
          </a>
        </li>
      ))}
    </ul>
  );
}
