import { Problem } from '@hubwright/contracts/problems';
import type { ReleaseContent } from '@hubwright/contracts/releases/operations';
import { dateIn } from '../../platform/command/clock.ts';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { bladeRulesOf } from '../manuals/public.ts';
import { hoursWords } from '../units/public.ts';
import { conditionOf } from '../work-orders/public.ts';
import { directiveReferences } from './directive-items.ts';
import type { ReleaseFacts } from './release-facts.ts';
import { factsShown, wordOfWork } from './word-of-work.ts';

const caution =
  'This record prepares a release. The release itself is the act of the authorised person who signs it, under the shop’s certificate and the local authority, and covers only the work named here.';
const fresh = hoursWords({ tenths: 0, atLeastTenths: 0 });
const demonstration = 'Demonstration data, not for use on aircraft.';

/** Who approves, as they are at the signature. */
interface Approver {
  readonly id: string;
  readonly name: string;
  /** Their own certificate number where the authority asks for it (empty when they have none), else undefined. */
  readonly personCertificate: string | undefined;
}

/** The approver's name and, where the shop's authority asks for it, their own certificate number, copied as they are now. */
export async function approverOf(tx: Tx, id: string, shop: { namesPersonCertificate: boolean }): Promise<Approver> {
  const person = await tx.person.findUniqueOrThrow({
    where: { id },
    select: { displayName: true, certificateNumber: true },
  });
  const personCertificate = shop.namesPersonCertificate ? (person.certificateNumber ?? '') : undefined;
  return { id, name: person.displayName, personCertificate };
}

/** Throws `record-incomplete` naming each item of 14 CFR 43.9(a) the record would lack. */
export function refuseIncomplete({ signOffs }: ReleaseFacts, content: ReleaseContent, approverId: string): void {
  const alone = signOffs.length > 0 && signOffs.every(({ personId }) => personId === approverId);
  const missing = missingFromRecord(content, alone);
  if (missing.length > 0) throw new Problem('record-incomplete', `The record lacks ${missing.join(', ')}`, { missing });
}

/** What the record holds beside what was signed before. */
export interface RecordGiven {
  readonly number: string;
  readonly approver: Approver;
  readonly signedAt: Date;
  readonly remarks: string;
  readonly completedOn: string | undefined;
}

/** The record of the work as it will be signed. */
export async function releaseContent(tx: Tx, facts: ReleaseFacts, given: RecordGiven): Promise<ReleaseContent> {
  const { workOrder } = facts;
  const references = await dataReferences(tx, facts);
  const directives = await directiveReferences(tx, facts, dateIn(facts.shop.zone, given.signedAt));
  return {
    number: given.number,
    workOrder: workOrder.number,
    customer: workOrder.customer.name,
    aircraft: workOrder.aircraft?.registration ?? null,
    ...(await whatWasWorkedOn(tx, facts, dateIn(facts.shop.zone, given.signedAt))),
    description: [descriptionOf(facts, references), ...(await sizeOf(tx, facts)).sentences].join('\n'),
    dataReferences: [...references, ...directives],
    completedOn: given.completedOn ?? lastPerformedOn(facts),
    performedBy: performers(facts, given.approver.id),
    findings: workOrder.findings.map((finding) => ({
      number: finding.number,
      part: finding.traveler.position,
      description: `${finding.place}: ${finding.description}`,
      disposition: finding.disposition ?? '',
    })),
    partsReplaced: await newParts(tx, workOrder.id),
    remarks: given.remarks,
    facts: factsShown(facts).map(({ fact, steps }) => ({ fact, shown: steps.length > 0 })),
    ...approvalOf(facts, given),
  };
}

/** Times are those computed for the day it is released on; papers alone would leave out what was flown since. */
async function whatWasWorkedOn(tx: Tx, facts: ReleaseFacts, on: string) {
  const { workOrder, within } = facts;
  const { word } = wordOfWork(facts);
  const times = facts.times.on(workOrder.unitId, on);
  const { maker, partNumber, serial } = workOrder.unit;
  return {
    word,
    unit: {
      kind: workOrder.model.kind,
      maker,
      model: (await sizeOf(tx, facts)).designation,
      partNumber,
      serial: serial ?? '',
    },
    parts: within.map(({ position, item }) => ({
      position,
      partNumber: item.partNumber,
      serial: item.serial ?? '',
      sinceNew: hoursWords(facts.times.on(item.id, on).sinceNew),
      sinceOverhaul: sinceOverhaul(facts, item.id, on),
    })),
    times: {
      sinceNew: hoursWords(times.sinceNew),
      sinceOverhaul: word === 'overhauled' ? fresh : hoursWords(times.sinceOverhaul),
    },
  };
}

/**
 * What the propeller is called at its diameter, and that its blades were shortened on this visit: a major repair (14 CFR 43 App. A
 * (b)(3)(iii)), every blade alike, the new designation marked (AC 43.13-1B 8-73b).
 */
async function sizeOf(tx: Tx, { workOrder }: ReleaseFacts): Promise<{ designation: string; sentences: string[] }> {
  const { diameters } = await bladeRulesOf(tx, workOrder);
  const { diameter } = await conditionOf(tx, workOrder);
  const named = diameters.find((one) => diameter !== null && Number(one.diameter) === Number(diameter));
  const designation = named?.designation ?? workOrder.model.designation;
  const sentence = `Major repair: every blade shortened to a diameter of ${workOrder.shortenTo}; the propeller is now designated ${designation}.`;
  return { designation, sentences: workOrder.shortenTo === null ? [] : [sentence] };
}

/** The approval as it is signed now, under the shop's certificate and in its words. */
export function approvalOf({ shop }: ReleaseFacts, given: Pick<RecordGiven, 'approver' | 'signedAt'>) {
  const statements = shop.recordStatements as { approval: string; caution: string };
  return {
    approvedBy: {
      name: given.approver.name,
      certificateNumber: shop.certificateNumber,
      certificateKind: `Repair station: ${shop.ratings.join(', ')}`,
      ...(given.approver.personCertificate === undefined
        ? {}
        : { personCertificate: given.approver.personCertificate }),
      signedAt: given.signedAt.toISOString(),
    },
    statement: statements.approval,
    caution: [...new Set([caution, statements.caution, demonstration])].join(' '),
  };
}

/** Items of 14 CFR 43.9(a) the record lacks, in words. Each alone keeps it from being signed. */
export function missingFromRecord(content: ReleaseContent, byApproverAlone: boolean): string[] {
  const { approvedBy } = content;
  const needed: [string, boolean][] = [
    [
      'a description of the work or a reference to data (43.9(a)(1))',
      content.description.trim() !== '' || content.dataReferences.length > 0,
    ],
    ['the date of completion (43.9(a)(2))', content.completedOn !== ''],
    ['the name of the person who did the work (43.9(a)(3))', content.performedBy.length > 0 || byApproverAlone],
    ['the name of the person who approves (43.9(a)(4))', approvedBy.name.trim() !== ''],
    ['the certificate number (43.9(a)(4))', approvedBy.certificateNumber.trim() !== ''],
    ['the kind of certificate (43.9(a)(4))', approvedBy.certificateKind.replace('Repair station:', '').trim() !== ''],
    [
      'the approving person’s own certificate number, which the authority asks for',
      approvedBy.personCertificate !== '',
    ],
    ['the signature (43.9(a)(4))', approvedBy.signedAt !== ''],
    ['the serial of the unit', content.unit.serial !== ''],
  ];
  return needed.filter(([, there]) => !there).map(([what]) => what);
}

function descriptionOf(facts: ReleaseFacts, references: readonly string[]): string {
  const { workOrder } = facts;
  const { word } = wordOfWork(facts);
  const first = `${word.charAt(0).toUpperCase()}${word.slice(1)} by ${references.join('; ')}.`;
  const travelers = workOrder.travelers.map((traveler) => {
    const signed = facts.steps.filter(({ travelerId, state }) => travelerId === traveler.id && state === 'signed');
    const rejected = traveler.disposition === 'reject' ? ' (rejected)' : '';
    return `${traveler.position}${rejected}, ${traveler.number}: ${signed.map(({ title }) => title).join('; ')}.`;
  });
  return [first, ...travelers].join('\n');
}

async function dataReferences(tx: Tx, facts: ReleaseFacts): Promise<string[]> {
  const rows = await tx.manualRevision.findMany({
    where: { id: { in: [...new Set(facts.signOffs.map(({ revisionId }) => revisionId))] } },
    include: { manual: true },
    orderBy: [{ manual: { number: 'asc' } }, { issuedOn: 'asc' }],
  });
  const names = await namesOf(tx, [...rows, ...facts.documents]);
  return [
    ...rows.map((row) => `${row.manual.number} revision ${row.revision}, ${row.manual.title}${checked(row, names)}`),
    ...facts.documents.map((row) => `${row.document.number} ${row.issue}, ${row.document.title}${checked(row, names)}`),
  ];
}

interface Checked {
  readonly currencyCheckedBy: string | null;
  readonly currencyCheckedOn: Date | null;
}

/** Who asked whether it is current, and when; a record says nothing where nobody did. */
function checked(
  { currencyCheckedBy: by, currencyCheckedOn: on }: Checked,
  names: ReadonlyMap<string, string>,
): string {
  return by && on ? ` (found current ${fromDbDate(on)} by ${names.get(by) ?? ''})` : '';
}

async function namesOf(tx: Tx, rows: readonly Checked[]): Promise<Map<string, string>> {
  const ids = [...new Set(rows.flatMap(({ currencyCheckedBy }) => currencyCheckedBy ?? []))];
  const people = await tx.person.findMany({ where: { id: { in: ids } }, select: { id: true, displayName: true } });
  return new Map(people.map(({ id, displayName }) => [id, displayName]));
}

/** The shop's day on which the last step was done. */
export function lastPerformedOn({ signOffs, shop }: ReleaseFacts): string {
  const last = signOffs.reduce((latest, { performedAt }) => Math.max(latest, performedAt.getTime()), 0);
  return last === 0 ? '' : dateIn(shop.zone, new Date(last));
}

/** Everyone but the approver whose work stands signed, by name. */
function performers({ steps }: ReleaseFacts, approverId: string): string[] {
  const signed = steps.flatMap(({ signOff }) => (signOff && signOff.personId !== approverId ? [signOff.person] : []));
  return [...new Set(signed)].sort();
}

async function newParts(tx: Tx, workOrderId: string): Promise<ReleaseContent['partsReplaced']> {
  const rows = await tx.balance.findMany({
    where: { placeKind: 'unit', placeRef: workOrderId, onHand: { gt: 0 }, lot: { origin: { not: 'taken-off' } } },
    include: { lot: { include: { part: true } } },
    orderBy: { lot: { part: { number: 'asc' } } },
  });
  return rows.map(({ lot, onHand }) => ({
    part: lot.part.number,
    description: lot.part.description,
    quantity: onHand,
    lot: lot.code,
  }));
}

/** Only what was overhauled here starts anew; a replacement keeps its own times. */
function sinceOverhaul(facts: ReleaseFacts, itemId: string, on: string): string {
  const isFresh = wordOfWork(facts).word === 'overhauled' && overhauledItems(facts).includes(itemId);
  return isFresh ? fresh : hoursWords(facts.times.on(itemId, on).sinceOverhaul);
}

/** The unit and those of its parts that went through this overhaul and stay. */
export function overhauledItems({ workOrder, installations }: ReleaseFacts): string[] {
  const here = new Set([workOrder.unitId, ...installations.map(({ itemId }) => itemId)]);
  return workOrder.travelers
    .filter(({ itemId, disposition }) => here.has(itemId) && disposition !== 'reject')
    .map(({ itemId }) => itemId);
}
