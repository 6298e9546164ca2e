import type { PeeningLot } from '@hubwright/contracts/peening/operations';
import { Paper } from '../../platform/print/paper.ts';
import { curveFacts, type FittedArea, type PrintOptions, type SetupOnPaper } from './print-setup.ts';

type Strip = PeeningLot['opening'][number];

interface Signature {
  readonly what: string;
  readonly who: string | null;
  readonly at: Date | null;
}

export interface LotOnPaper extends Pick<PeeningLot, 'number' | 'state' | 'spec' | 'opening' | 'closing' | 'coverage'> {
  readonly setup: SetupOnPaper;
  readonly mediaLot: string;
  readonly check: { passed: boolean; reasons: readonly string[]; who: string; at: Date } | null;
  readonly parts: readonly {
    readonly travelerNumber: string;
    readonly workOrderNumber: string;
    readonly position: string;
    readonly serial: string;
    /** Who signed its peening, with the supervisor where there was one. */
    readonly signed: string;
  }[];
  readonly signatures: readonly Signature[];
  readonly reasons: readonly string[];
  readonly decision: string | null;
  /** What was decided since a check of its media failed. */
  readonly doubts: readonly string[];
}

/** A peening lot on paper: everything that proves it, and what was decided where something did not. */
export function printLot(lot: LotOnPaper, options: PrintOptions): Promise<Buffer> {
  const { setup, check } = lot;
  const printed = options.inWords(options.at);
  const paper = new Paper({
    title: `Peening lot ${lot.number}`,
    ...{ shopName: options.shopName, at: options.at },
    foot: `${lot.number}   ·   printed ${printed}   ·   ${options.caution}`,
  });
  paper.paragraph(`Printed ${printed}. What was signed since stands on screen, and only that counts.`);
  paper.facts([
    ['State', stateWords[lot.state]],
    ['Why', lot.reasons.join(' ')],
    ['Decided', lot.decision ?? ''],
    ['Machine', `${setup.machine.code}, ${setup.machine.title}`],
    ['Program', `${setup.program}, qualified by ${setup.qualifiedBy}, ${options.inWords(setup.qualifiedAt)}`],
    ...setup.parameters.map(({ name, value, unit }) => [name, `${value} ${unit}`.trim()] as const),
    ['Media', `${lot.spec.mediaSize}, lot ${lot.mediaLot}`],
    ['Media checked', check ? checkWords(check, options) : 'no check on record'],
  ]);
  areas(paper, lot);
  parts(paper, lot);
  paper.heading('Signatures');
  paper.facts(
    lot.signatures.map(({ what, who, at }) => [what, who && at ? `${who}, ${options.inWords(at)}` : 'not signed']),
  );
  for (const doubt of lot.doubts) paper.paragraph(doubt);
  return paper.finish();
}

const stateWords: Record<PeeningLot['state'], string> = {
  open: 'opening strips good, not peened yet',
  peened: 'peened, closing strips missing: NOT RELEASED',
  released: 'released by its strips',
  held: 'HELD: closing strips failed',
  redone: 'closing strips failed, all of it peened again',
  'broken-up': 'broken up before peening',
};

function checkWords({ passed, reasons, who, at }: NonNullable<LotOnPaper['check']>, { inWords }: PrintOptions): string {
  return `${passed ? 'good' : `NOT GOOD (${reasons.join(' ')})`}, ${who}, ${inWords(at)}`;
}

function areas(paper: Paper, { spec, setup, opening, closing, coverage }: LotOnPaper): void {
  for (const { name, strip, low, high, unit, positions } of spec.areas) {
    const of = (readings: readonly Strip[] | null) => readings?.find(({ area }) => area === name);
    paper.heading(`${name}: ${low} to ${high} ${unit} ${strip}`);
    paper.table(
      [
        { head: 'Strip', width: 80 },
        { head: 'Before', width: 80, side: 'right' },
        { head: 'After', width: 80, side: 'right' },
        { head: `Arc height, ${unit}`, width: 100, side: 'right' },
        { head: 'Batch', width: '*' },
      ],
      [stripRow('opening', of(opening)), stripRow('closing', of(closing))],
    );
    const reached = coverage?.find(({ area }) => area === name)?.percent;
    const fitted = (setup.areas as FittedArea[]).find((area) => area.name === name);
    paper.facts([
      ['Strips at station', positions.join(', ')],
      ['Coverage', `${reached === undefined ? 'not signed' : `${reached} %`}; ${spec.coverage} % asked for`],
      ...(fitted ? curveFacts(fitted) : []),
    ]);
  }
}

/** Readings are never printed before they were read. */
function stripRow(when: string, strip: Strip | undefined): string[] {
  return [when, strip?.before ?? '', strip?.after ?? '', strip?.arcHeight ?? '', strip?.batch ?? ''];
}

function parts(paper: Paper, lot: LotOnPaper): void {
  paper.heading('Parts').table(
    [
      { head: 'Traveler', width: 70 },
      { head: 'Work order', width: 80 },
      { head: 'Position', width: 70 },
      { head: 'Serial', width: 90 },
      { head: 'Signed', width: '*' },
    ],
    lot.parts.map((one) => [one.travelerNumber, one.workOrderNumber, one.position, one.serial, one.signed]),
  );
}
