const instant = (column: string) => `to_char(${column} AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`;

/** $1 number to go on before, $2 customer, $3 state, $4 most rows. Letters with what they told of and what became of them, newest first. */
export const lettersSql = `
  SELECT l.id::text, l.number, json_build_object('id', c.id, 'name', c.name) AS customer, l.way, d.state,
    json_build_object('name', d.to_name, 'email', d.to_email, 'address', d.to_address) AS "to", l.subject,
    (SELECT json_agg(json_build_object('unitId', u.id, 'designation', m.designation, 'serial', coalesce(u.serial, u.provisional_name, ''),
        'intervalDays', lu.interval_days, 'dueOn', lu.due_on::text) ORDER BY lu.due_on, u.serial, u.id)
      FROM reminder_letter_units lu JOIN serialized_items u ON u.id = lu.unit_id JOIN unit_models m ON m.id = u.model_id
      WHERE lu.letter_id = l.id) AS units,
    l.made_on::text AS "madeOn", p.display_name AS by, d.message_id AS "messageId", d.tries, ${instant('d.next_try_at')} AS "nextTryAt",
    d.outcome, ${instant('d.sent_at')} AS "sentAt", d.version,
    (SELECT json_agg(json_build_object('what', e.what, 'detail', e.detail, 'at', ${instant('e.at')},
        'by', coalesce(w.display_name, 'the server')) ORDER BY e.at, e.id)
      FROM reminder_events e LEFT JOIN people w ON w.id = e.person_id WHERE e.letter_id = l.id) AS events
  FROM reminder_letters l JOIN reminder_deliveries d ON d.letter_id = l.id JOIN customers c ON c.id = l.customer_id
  JOIN people p ON p.id = l.person_id
  WHERE ($1::text IS NULL OR l.number < $1) AND ($2::uuid IS NULL OR l.customer_id = $2) AND ($3::text IS NULL OR d.state = $3)
  ORDER BY l.number DESC LIMIT $4`;
