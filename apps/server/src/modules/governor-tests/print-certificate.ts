import { Paper } from '../../platform/print/paper.ts';
import type { RunRecord } from './run-record.ts';

export interface SignedBy {
  readonly name: string;
  readonly under: string;
  readonly signedAt: string;
  readonly isSupervisor: boolean;
  readonly contentHash: string;
}
export interface CertificateFacts {
  readonly shopName: string;
  readonly caution: string;
  readonly at: Date;
  readonly workOrder: string;
  readonly traveler: string;
  readonly unit: string;
  readonly step: string;
  readonly signed: readonly SignedBy[];
  /** An instant as the shop's clock shows it. */
  readonly inWords: (instant: string) => string;
}

/** A run that passed, on paper. Until its step is signed it says that it is no certificate. */
export function printCertificate(record: RunRecord, facts: CertificateFacts): Promise<Buffer> {
  const isSigned = facts.signed.length > 0;
  const paper = new Paper({
    title: isSigned ? `Governor test certificate ${record.number}` : `Governor test ${record.number}, not signed`,
    shopName: facts.shopName,
    at: facts.at,
    foot: `${record.number}   ·   printed ${facts.inWords(facts.at.toISOString())}   ·   ${facts.caution}`,
  });
  if (!isSigned) paper.paragraph('NO CERTIFICATE: the step this run belongs to is not signed with it.');
  subject(paper, record, facts);
  points(paper, record);
  adjustments(paper, record, facts);
  paper.heading('Signatures');
  for (const { name, under, signedAt, isSupervisor, contentHash } of facts.signed)
    paper.paragraph(
      `${name} (${under.replaceAll('-', ' ')}${isSupervisor ? ', supervisor' : ''}), signed ${facts.inWords(signedAt)}; content ${contentHash}`,
    );
  if (!isSigned) paper.paragraph('None.');
  paper.paragraph('This states what was measured on the bench. It is no approval for return to service.');
  return paper.finish();
}

function subject(paper: Paper, record: RunRecord, facts: CertificateFacts): void {
  const { program, bench, oil } = record;
  paper.facts([
    ['Unit', facts.unit],
    ['Work order', `${facts.workOrder}, traveler ${facts.traveler}, ${facts.step}`],
    ['Application', `${program.application}, approval ${program.approval}`],
    ['Tested by', `${program.manual}, program issue ${program.issue}: ${program.basis}`],
    ['Drive', `${program.rotation.replace('-', ' ')}, ratio ${program.driveRatio} governor to engine`],
    ['Oil', `${oil}, at ${program.oil.low} to ${program.oil.high} ${program.oil.unit}; asked for: ${program.oil.kind}`],
    ['Bench', `${bench.tag} ${bench.title}, in calibration until ${bench.calibrationDueOn}`],
    ...acceptance(record),
    ...(record.supervisor ? [['Supervised by', record.supervisor] as const] : []),
  ]);
}

const methods: Record<string, string> = {
  uncertainty: 'by the whole doubt',
  'root-sum-square': 'by the root of the sum of squares',
  'managed-risk': 'by managed risk',
};

/** A guard band is said once; each point then has its own limits beside the manual's. */
function acceptance({ acceptedBy, points: taken }: RunRecord): (readonly [string, string])[] {
  if (!acceptedBy) return [];
  const doubts = [...new Set(taken.flatMap(({ doubt }) => (doubt ? [`± ${doubt}`] : [])))].join(', ');
  return [
    ['Accepted', `inside the manual’s limits ${methods[acceptedBy] ?? acceptedBy} of the bench: ${doubts} (k = 2)`],
  ];
}

function points(paper: Paper, record: RunRecord): void {
  paper.heading('Points against limits');
  paper.table(
    [
      { head: 'Point', width: '*' },
      { head: 'Limits', width: 120 },
      { head: 'Read', width: 80, side: 'right' },
      { head: 'Oil', width: 55, side: 'right' },
      { head: 'Taken', width: 105 },
    ],
    record.points.map(({ name, limits, accepted, value, unit, oilTemperature, taken, source, atRpm }) => [
      atRpm ? `${name}, at ${atRpm} rpm` : name,
      accepted ? `${limits}; accepted ${accepted}` : limits,
      `${value ?? '–'} ${unit ?? ''}`,
      oilTemperature ?? '',
      `${source ?? ''}${taken > 1 ? `, taken ${taken} times` : ''}`,
    ]),
  );
}

function adjustments(paper: Paper, record: RunRecord, { inWords }: CertificateFacts): void {
  if (record.adjustments.length === 0) return;
  paper.heading('Adjusted on the bench');
  for (const { what, before, after, madeBy, madeAt, reopens } of record.adjustments)
    paper.paragraph(
      `${what}: from ${before} to ${after}; ${madeBy}, ${inWords(madeAt)}. Taken again: ${reopens.join(', ')}.`,
    );
}
