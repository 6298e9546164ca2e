/**
 * SQL for the words a person knows a place by: “bin A-01”, “tray of KIT-0004”, “rack of WO-1001”.
 *
 * @param columns names of the columns that hold kind and ref; constants of the query, never input
 */
export function placeTitle(columns: { kind: string; ref: string }): string {
  const { kind, ref } = columns;
  return `CASE ${kind}
    WHEN 'bin' THEN 'bin ' || ${ref}
    WHEN 'tray' THEN 'tray of ' || coalesce((SELECT k.code FROM kits k WHERE k.id = nullif(${ref}, '')::uuid), ${ref})
    WHEN 'rack' THEN 'rack of ' || coalesce((SELECT w.number FROM work_orders w WHERE w.id = nullif(${ref}, '')::uuid), ${ref})
    WHEN 'unit' THEN coalesce((SELECT 'unit of ' || w.number FROM work_orders w WHERE w.id = nullif(${ref}, '')::uuid),
      (SELECT 'propeller of ' || f.number FROM field_balances f WHERE f.id = nullif(${ref}, '')::uuid), 'unit of ' || ${ref})
    WHEN 'customer' THEN 'customer ' || coalesce((SELECT c.name FROM customers c WHERE c.id = nullif(${ref}, '')::uuid), '')
    WHEN 'held' THEN 'held for ' || coalesce((SELECT c.name FROM customers c WHERE c.id = nullif(${ref}, '')::uuid), ${ref})
    WHEN 'vendor' THEN 'vendor ' || coalesce((SELECT s.name FROM suppliers s WHERE s.id = nullif(${ref}, '')::uuid), ${ref})
    WHEN 'lost' THEN 'lost at ' || coalesce((SELECT s.name FROM suppliers s WHERE s.id = nullif(${ref}, '')::uuid), ${ref})
    WHEN 'other-lot' THEN coalesce((SELECT 'lot ' || x.code FROM lots x WHERE x.id = nullif(${ref}, '')::uuid), 'another lot')
    WHEN 'count' THEN 'count difference' ELSE ${kind} END`;
}
