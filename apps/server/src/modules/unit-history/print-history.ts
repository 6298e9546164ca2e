import type { WholeUnitHistory } from '@hubwright/contracts/units/unit-history-operations';
import { Paper } from '../../platform/print/paper.ts';

type Visit = WholeUnitHistory['workOrders'][number];

const hours = (tenths: number | 'unknown' | null) =>
  typeof tenths === 'number' ? `${(tenths / 10).toFixed(1)} h` : 'unknown';
const total = ({ tenths, atLeastTenths }: { tenths: number | 'unknown'; atLeastTenths: number }) =>
  tenths === 'unknown' ? `unknown; at least ${hours(atLeastTenths)}` : hours(tenths);
const cyclesOf = ({ cycles, atLeast }: { cycles: number | 'unknown'; atLeast: number }) =>
  cycles === 'unknown' ? `unknown; at least ${atLeast}` : String(cycles);
const called = ({ serial, provisionalName }: { serial: string | null; provisionalName: string | null }) =>
  serial ?? provisionalName ?? 'not read';
const day = (instant: string | null) => instant?.slice(0, 10) ?? '';

/** The whole history to read and to hand over. What was signed word for word is in the JSON; here stand its hashes. */
export function printHistory(history: WholeUnitHistory): Promise<Buffer> {
  const { identity, shop, writtenAt } = history;
  const title = `History of ${identity.maker} ${identity.partNumber} ${called(identity)}`;
  const paper = new Paper({
    title,
    shopName: shop,
    at: new Date(writtenAt),
    foot: `${title}, written ${day(writtenAt)}`,
  });
  if (identity.serial !== null && /^[\x20-\x7e]+$/.test(identity.serial)) paper.barcode(identity.serial);
  paper.facts([
    ['Kind', identity.kind.replaceAll('-', ' ')],
    ['Where', history.where.words],
    ['Time since new', total(history.times.sinceNew)],
    ['Time since overhaul', total(history.times.sinceOverhaul)],
    ['Cycles since new', cyclesOf(history.times.cyclesSinceNew)],
    ['As of', history.times.asOf],
    ['Counted through', history.times.sinceNew.countedThrough],
  ]);
  for (const sentence of [...history.times.unknown, ...history.times.doubts]) paper.paragraph(sentence);
  printTree(paper, history);
  printFlying(paper, history);
  for (const visit of history.workOrders) printVisit(paper, visit);
  printReleases(paper, history);
  printDocuments(paper, history);
  return paper.finish();
}

function printTree(paper: Paper, { parts, installedIn }: WholeUnitHistory): void {
  if (parts.length > 0)
    paper.heading('Made of').table(
      [
        { head: 'Position', width: 110 },
        { head: 'Part', width: '*' },
        { head: 'From', width: 64 },
        { head: 'To', width: 64 },
        { head: 'Since new', width: 74, side: 'right' },
        { head: 'Counted through', width: 74 },
      ],
      parts.map((part) => [
        part.level > 1 ? `${'– '.repeat(part.level - 1)}${part.position}` : part.position,
        `${part.maker} ${part.partNumber} ${called(part)}`,
        part.fromDate,
        part.toDate ?? 'in it',
        total({ tenths: part.times.sinceNew.tenths, atLeastTenths: part.times.sinceNew.atLeast }),
        part.times.countedThrough,
      ]),
    );
  if (installedIn.length > 0)
    paper.heading('Sat in').table(
      [
        { head: 'Unit', width: '*' },
        { head: 'Position', width: 120 },
        { head: 'From', width: 64 },
        { head: 'To', width: 64 },
      ],
      installedIn.map((one) => [
        `${one.partNumber} ${one.serial ?? ''}`,
        one.position,
        one.fromDate,
        one.toDate ?? 'today',
      ]),
    );
}

function printPapers(paper: Paper, { times, workOrders }: WholeUnitHistory): void {
  if (times.papers.length === 0) return;
  paper.heading('Times as papers said them').table(
    [
      { head: 'On', width: 66 },
      { head: 'Since new', width: 74, side: 'right' },
      { head: 'Since overhaul', width: 80, side: 'right' },
      { head: 'From', width: '*' },
    ],
    times.papers.map((row) => [
      ...[row.recordedOn, hours(row.sinceNewTenths), hours(row.sinceOverhaulTenths)],
      whoseWord(row, workOrders),
    ]),
  );
}

/** Whose word an overhaul is: a visit here stands behind it, or its owner says so. */
function whoseWord(
  { basis, workOrderId }: WholeUnitHistory['times']['papers'][number],
  visits: WholeUnitHistory['workOrders'],
): string {
  if (basis !== 'overhaul') return basis;
  if (workOrderId === null) return 'overhaul, as its owner says';
  return `overhaul on ${visits.find(({ id }) => id === workOrderId)?.number ?? 'a work order here'}`;
}

function printFlying(paper: Paper, history: WholeUnitHistory): void {
  const { intervals, readings } = history;
  if (intervals.length > 0)
    paper.heading('On aircraft, as recorded').table(
      [
        { head: 'Aircraft', width: 90 },
        { head: 'Installed', width: 110 },
        { head: 'Removed', width: 110 },
        { head: 'On record', width: 66 },
        { head: 'From whom, or why', width: '*' },
      ],
      intervals.map((row) => [
        `${row.aircraft.registration}, ${row.position}`,
        `${row.from} at ${hours(row.fromTenths)}`,
        row.to === null ? 'still on' : `${row.to} at ${hours(row.toTenths)}`,
        row.state,
        row.basis,
      ]),
    );
  printPapers(paper, history);
  printReadings(paper, readings);
}

function printReadings(paper: Paper, readings: WholeUnitHistory['readings']): void {
  if (readings.length > 0)
    paper.heading('Meter readings while it flew').table(
      [
        { head: 'On', width: 66 },
        { head: 'Aircraft', width: 90 },
        { head: 'Meter', width: '*' },
        { head: 'It read', width: 80, side: 'right' },
      ],
      readings.map((row) => [
        row.readOn,
        row.registration,
        row.meter.replaceAll('-', ' '),
        row.cycles === null ? hours(row.hoursTenths) : `${row.cycles} cycles`,
      ]),
    );
}

function printVisit(paper: Paper, visit: Visit): void {
  paper.heading(`Work order ${visit.number}`).facts([
    ['Customer', visit.customer.name],
    ['Aircraft', visit.aircraft ?? ''],
    ['Scope', visit.scope.replaceAll('-', ' ')],
    ['Reason', visit.reason],
    ['Received', visit.receivedOn],
    ['Left', day(visit.shippedAt ?? visit.closedAt) || 'still here'],
  ]);
  if (visit.findings.length > 0)
    paper.table(
      [
        { head: 'Finding', width: 66 },
        { head: 'Where', width: 110 },
        { head: 'What', width: '*' },
        { head: 'Decided', width: 80 },
      ],
      visit.findings.map((one) => [
        one.number,
        `${one.position}, ${one.area.replaceAll('-', ' ')}`,
        [one.damage, one.place, one.description].filter(Boolean).join('; '),
        one.disposition ?? 'open',
      ]),
    );
  if (visit.partsReplaced.length > 0)
    paper.table(
      [
        { head: 'New part', width: 110 },
        { head: 'Description', width: '*' },
        { head: 'Pieces', width: 50, side: 'right' },
        { head: 'Lot', width: 80 },
      ],
      visit.partsReplaced.map(({ part, description, quantity, lot }) => [part, description, String(quantity), lot]),
    );
  printSignatures(paper, visit.signatures);
}

function printSignatures(paper: Paper, signatures: Visit['signatures']): void {
  if (signatures.length === 0) return;
  paper.table(
    [
      { head: 'Signed', width: 62 },
      { head: 'By', width: 90 },
      { head: 'What', width: '*' },
      { head: 'SHA-256 of what was signed', width: 150 },
    ],
    signatures.map((one) => [
      day(one.signedAt),
      one.person.displayName,
      [
        one.step ? `${one.step.traveler} ${one.step.title}` : one.meaning,
        one.result,
        one.supersedesId ? 'in the place of an earlier one' : '',
      ]
        .filter(Boolean)
        .join('; '),
      one.contentHash.replaceAll(/(.{16})(?=.)/g, '$1 '),
    ]),
  );
}

function printReleases(paper: Paper, { releases, directives }: WholeUnitHistory): void {
  if (releases.length > 0)
    paper.heading('Approved for return to service').table(
      [
        { head: 'Number', width: 90 },
        { head: 'On', width: 66 },
        { head: 'Word', width: 70 },
        { head: 'Work order', width: 76 },
        { head: 'Stands', width: '*' },
      ],
      releases.map((one) => [
        one.number,
        day(one.releasedAt),
        one.word,
        one.workOrder.number,
        one.supersededById === null ? 'yes' : 'no: corrected by a newer one',
      ]),
    );
  if (directives.length > 0)
    paper.heading('Directives and bulletins').table(
      [
        { head: 'Number', width: 110 },
        { head: 'On', width: 62 },
        { head: 'Outcome', width: 76 },
        { head: 'How', width: '*' },
        { head: 'By', width: 86 },
      ],
      directives.map((one) => [
        `${one.number} ${one.revision}`,
        one.doneOn,
        one.outcome.replaceAll('-', ' '),
        one.method,
        one.recordedBy.displayName,
      ]),
    );
}

function printDocuments(paper: Paper, { documents, papers }: WholeUnitHistory): void {
  if (documents.length > 0)
    paper.heading('Documents worked to').table(
      [
        { head: 'Work order', width: 80 },
        { head: 'Document', width: '*' },
        { head: 'Issue', width: 80 },
        { head: 'Of', width: 66 },
      ],
      documents.map((one) => [one.workOrder.number, `${one.number} ${one.title}`, one.issue, one.issuedOn]),
    );
  if (papers.length > 0)
    paper.heading('Photos and papers').table(
      [
        { head: 'Work order', width: 80 },
        { head: 'What', width: '*' },
        { head: 'Added', width: 66 },
        { head: 'Counts', width: 130 },
      ],
      papers.map((one) => [
        one.workOrder.number,
        one.title,
        day(one.addedAt),
        one.struckBecause === null ? 'yes' : `no: ${one.struckBecause}`,
      ]),
    );
}
