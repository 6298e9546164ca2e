import type { TravelerDetail } from '@hubwright/contracts/work-orders/traveler-operations';
import { Paper } from '../../platform/print/paper.ts';
import { limitsInWords } from './judge-values.ts';
import { isLined, linesOnPaper } from './sheets/sheet-on-paper.ts';
import { sheetWords } from './sheets/sheet-words.ts';
import { stepCode } from './step-code.ts';

type Step = TravelerDetail['steps'][number];
type SignOff = Step['signOffs'][number];

export interface PrintOptions {
  readonly shopName: string;
  readonly caution: string;
  readonly at: Date;
  /** An instant as the shop's clock shows it. */
  readonly inWords: (instant: string) => string;
}

/** Travelers on paper, each on a sheet of its own: what a bench without a screen works by, and what a scan leads back from. */
export function printTravelers(travelers: readonly TravelerDetail[], options: PrintOptions): Promise<Buffer> {
  const [first, ...more] = travelers;
  if (!first) throw new Error('There is no traveler to print.');
  const printed = options.inWords(options.at.toISOString());
  const paper = new Paper({
    title: titleOf(first),
    shopName: options.shopName,
    at: options.at,
    foot: `${first.workOrder.number}   ·   printed ${printed}   ·   ${options.caution}`,
  });
  paper.paragraph(`Printed ${printed}. What was signed since stands on screen, and only that counts.`);
  paper.barcode(first.number);
  paper.codedHeading('Scan out', 'CLOCK-OUT');
  sheet(paper, first, options);
  for (const traveler of more) {
    paper.sheet(titleOf(traveler), traveler.number);
    sheet(paper, traveler, options);
  }
  return paper.finish();
}

const plain = (word: string) => word.replaceAll('-', ' ');
const titleOf = ({ number, title }: TravelerDetail) => `Traveler ${number}: ${title}`;

function sheet(paper: Paper, traveler: TravelerDetail, options: PrintOptions): void {
  const { workOrder, unit, revision, findings } = traveler;
  paper.facts([
    ['Work order', `${workOrder.number}, ${workOrder.customer}`],
    ['Unit', `${unit.designation}, serial ${unit.serial}`],
    ['Part', `${traveler.position}, serial ${traveler.serial}`],
    ['Work by', `${revision.manual} revision ${revision.revision}`],
    ['Disposition', traveler.disposition ?? ''],
    ['Findings', findings.map(({ number, place, description }) => `${number} ${place}: ${description}`).join('; ')],
  ]);
  for (const step of traveler.steps.filter(({ state }) => state !== 'not-needed'))
    printStep(paper, { traveler, step }, options);
}

function printStep(
  paper: Paper,
  { traveler, step }: { traveler: TravelerDetail; step: Step },
  options: PrintOptions,
): void {
  paper.codedHeading(`${step.sequence}. ${step.title}`, stepCode(traveler.number, step.id));
  if (step.caution) paper.paragraph(`CAUTION: ${step.caution}`);
  if (step.instruction) paper.paragraph(step.instruction);
  if (step.sheet && !isLined(step.sheet)) paper.paragraph(`To be written down: ${sheetWords(step.sheet)}.`);
  paper.facts([
    ['Who', `${plain(step.process)}, ${step.level === 'inspect' ? 'inspects' : 'performs'}`],
    ['With', [plain(step.instrumentKind ?? ''), ...step.tools].filter(Boolean).join(', ')],
    ['How', howOf(step)],
    ['Attempt', step.attempt > 1 ? `${step.attempt} of ${step.mostRepairs + 1}` : ''],
  ]);
  const standing = step.signOffs.find(
    ({ supersededById, countersignsId }) => supersededById === null && countersignsId === null,
  );
  if (step.measures.length > 0) measures(paper, step, standing);
  if (!standing) toFillIn(paper, step, traveler);
  for (const signOff of step.signOffs) paper.paragraph(signatureOf(signOff, options));
  if (!standing)
    paper.paragraph('Signed ______________________________    Date ________________    Instrument ________________');
}

function howOf({ branch, waitMinutes, outside, batched, standardMinutes }: Step): string {
  return [
    `${standardMinutes} min`,
    ...(waitMinutes > 0 ? [`then ${hours(waitMinutes)} without hands`] : []),
    ...(outside ? ['done by an outside vendor'] : []),
    ...(batched ? ['in a load'] : []),
    ...(branch ? [`beside its neighbours (${branch})`] : []),
  ].join(', ');
}

function hours(minutes: number): string {
  return minutes % 60 === 0 ? `${minutes / 60} h` : `${minutes} min`;
}

/** Read values are never printed before they were read: an open step shows its limits and room to write. */
function measures(paper: Paper, step: Step, standing: SignOff | undefined): void {
  const readOf = (id: string) => standing?.values.find(({ measureId }) => measureId === id)?.value ?? '';
  paper.table(
    [
      { head: 'Measure', width: '*' },
      { head: 'Limits', width: 170 },
      { head: 'Read', width: 90, side: 'right' },
    ],
    step.measures.map((measure) => [measure.name, limitsInWords(measure), readOf(measure.id)]),
  );
}

/** An open sheet: what it asks to be read, with room to write. A signed one stands in words beside its signature. */
function toFillIn(paper: Paper, { sheet }: Step, { workOrder }: TravelerDetail): void {
  const lines = linesOnPaper(sheet, workOrder.application?.id ?? null);
  if (lines.length === 0) return;
  const columns = [
    { head: 'To read', width: '*' },
    { head: 'Limits', width: 170 },
    { head: 'Read', width: 90, side: 'right' },
  ] as const;
  paper.table(
    [...columns],
    lines.map(({ name, limits }) => [name, limits, '']),
  );
}

function signatureOf(signOff: SignOff, { inWords }: PrintOptions): string {
  const {
    person,
    authorisation,
    performedAt,
    signedAt,
    result,
    instrument,
    lateReason,
    supersededById,
    supervisor,
    sheet,
  } = signOff;
  const under = `${plain(authorisation.process)}, ${authorisation.level}`;
  return [
    `${supersededById ? 'Corrected since: signed' : 'Signed'} by ${person.displayName} (${under}), ${result === 'pass' ? 'good' : 'NOT GOOD'}`,
    `done ${inWords(performedAt)}, signed ${inWords(signedAt)}`,
    ...(lateReason ? [`late because ${lateReason}`] : []),
    ...(supervisor ? [`under the supervision of ${supervisor.displayName}, who signed the same`] : []),
    ...(instrument ? [`with ${instrument.tag}`] : []),
    ...(sheet?.said.map((line) => `${line.name}: ${'at' in line ? inWords(line.at) : line.value}`) ?? []),
  ].join('; ');
}
