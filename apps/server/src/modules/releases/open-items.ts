import type { Role } from '@hubwright/contracts/roles';
import { type Consent, movesOn, type Stage, stageTitles } from '@hubwright/contracts/work-orders/states';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';
import { openItems as openOfKits } from '../kits/public.ts';
import { unprovedLots } from '../peening/public.ts';
import { openDoubts } from '../processes/public.ts';
import { bladeSetOf, changedDocuments, openReviews } from '../work-orders/public.ts';
import { directiveItems } from './directive-items.ts';
import { lifeItems } from './life-items.ts';
import { type Holders, item, type OpenItem } from './open-item.ts';
import { type ReleaseFacts, type UnpaidFinding, unpaidFindings } from './release-facts.ts';

/** Everything still open before return to service, by name, with who can close it. */
export async function openItems(tx: Tx, facts: ReleaseFacts, today: string): Promise<OpenItem[]> {
  // One after another: a transaction has one connection.
  const holders = await holdersOn(tx, today);
  const unpaid = await unpaidFindings(tx, facts);
  const kits = await kitItems(tx, facts);
  const gauges = await overdueGauges(tx, facts, today);
  return [
    ...stageItems(facts),
    ...facts.workOrder.holds.map((hold) =>
      item('hold', `On hold: ${hold.reason}`, {
        role: hold.liftedByRole as Role,
        subject: { kind: 'hold', id: hold.id },
      }),
    ),
    ...revisionItems(facts),
    ...(await documentItems(tx, facts)),
    ...identityItems(facts),
    ...stepItems(facts, holders),
    ...findingItems(facts, holders),
    ...unpaid.map((finding) => unpaidItem(finding, holders)),
    ...(await lifeItems(tx, facts, { holders, today })),
    ...(await directiveItems(tx, facts, { holders, today })),
    ...kits,
    ...gauges,
    ...(await reviewItems(tx, facts, holders)),
    ...(await setItems(tx, facts, holders)),
    ...(await peeningItems(tx, facts, holders)),
    ...(await doubtItems(tx, facts, holders)),
  ];
}

/** Who takes the unit on from where it is: whom the state tables permit to. */
function stageItems({ workOrder }: ReleaseFacts): OpenItem[] {
  if (workOrder.stage === 'final-inspection') return [];
  const stage = workOrder.stage as Stage;
  return [
    item('stage', `The unit is at “${stageTitles[stage] ?? stage}”; it is released from final inspection`, {
      roles: movesOn({ stage, consent: workOrder.consent as Consent }),
      subject: { kind: 'work-order', id: workOrder.id },
    }),
  ];
}

/** An answer of no is an answer: the finding needs another disposition, or the unit goes back as it is. */
function unpaidItem({ id, number, isDeclined }: UnpaidFinding, holders: Holders): OpenItem {
  const subject = { kind: 'finding', id };
  if (!isDeclined)
    return item('over-and-above', `${number}: the customer has not approved what it costs`, {
      role: 'front-desk',
      subject,
    });
  return item('finding', `${number}: the customer declined what it costs; it needs a new disposition`, {
    people: holders.get('dimensional-inspection inspect') ?? [],
    subject,
  });
}

function revisionItems({ workOrder }: ReleaseFacts): OpenItem[] {
  const { revision } = workOrder;
  if (revision.state === 'current') return [];
  return [
    item('revision', `Revision ${revision.revision} of ${revision.manual.number} is superseded`, {
      role: 'inspector',
      subject: { kind: 'work-order', id: workOrder.id },
    }),
  ];
}

async function documentItems(tx: Tx, { workOrder }: ReleaseFacts): Promise<OpenItem[]> {
  const changed = await changedDocuments(tx, workOrder);
  return changed.map((number) =>
    item('revision', `The work does not go by the current issue of ${number}`, {
      role: 'inspector',
      subject: { kind: 'work-order', id: workOrder.id },
    }),
  );
}

/** Readings taken with an instrument that was then found out of tolerance. */
async function reviewItems(tx: Tx, { workOrder }: ReleaseFacts, holders: Holders): Promise<OpenItem[]> {
  const open = await openReviews(tx, workOrder.id);
  return open.map(({ id, tag, what, decision }) =>
    item(
      'instrument',
      `${what}: measured with ${tag}, found out of tolerance; ${decision ? 'to be measured again' : 'nobody decided yet'}`,
      {
        people: holders.get('dimensional-inspection inspect') ?? [],
        subject: { kind: 'calibration-review', id },
      },
    ),
  );
}

/** Blades that do not belong together, or of which nobody has decided; matched sets nobody has confirmed. */
async function setItems(tx: Tx, { workOrder }: ReleaseFacts, holders: Holders): Promise<OpenItem[]> {
  const { open } = await bladeSetOf(tx, workOrder);
  const people = holders.get('dimensional-inspection inspect') ?? [];
  return open.map((what) => item('finding', what, { people, subject: { kind: 'work-order', id: workOrder.id } }));
}

/** Parts whose peening no closing strip has proved, wherever they are by now. */
async function peeningItems(tx: Tx, { workOrder }: ReleaseFacts, holders: Holders): Promise<OpenItem[]> {
  const lots = await unprovedLots(tx, workOrder.id);
  const people = holders.get('shot-peening inspect') ?? [];
  return lots.map((what) => item('step', what, { people, subject: { kind: 'work-order', id: workOrder.id } }));
}

/** Parts that went through a tank or test system before it was read bad, and that nobody has answered for. */
async function doubtItems(tx: Tx, { workOrder }: ReleaseFacts, holders: Holders): Promise<OpenItem[]> {
  const open = await openDoubts(tx, workOrder.id);
  return open.map(({ id, what, process }) =>
    item('step', what, { people: holders.get(`${process} inspect`) ?? [], subject: { kind: 'equipment-doubt', id } }),
  );
}

function identityItems({ workOrder, installations }: ReleaseFacts): OpenItem[] {
  const all = [{ position: 'the unit', item: workOrder.unit }, ...installations];
  return all
    .filter((one) => one.item.serial === null)
    .map((one) =>
      item('identity', `The serial of ${one.position} is not confirmed`, {
        role: 'inspector',
        subject: { kind: 'unit', id: one.item.id },
      }),
    );
}

function stepItems({ steps }: ReleaseFacts, holders: Holders): OpenItem[] {
  const open = steps
    .filter(({ state }) => state === 'open')
    .map((step) =>
      item('step', `${step.traveler.number} ${step.traveler.position}: ${step.title}`, {
        people: holders.get(`${step.process} ${step.level}`) ?? [],
        subject: { kind: 'traveler', id: step.traveler.id },
      }),
    );
  // 14 CFR 145.213: an inspector finds the article airworthy with respect to the work before it is released.
  const planned = steps.some(({ process, state }) => process === 'final-inspection' && state !== 'not-needed');
  return planned
    ? open
    : [
        ...open,
        item('record', 'No final inspection is signed', { people: holders.get('final-inspection inspect') ?? [] }),
      ];
}

function findingItems({ workOrder, steps, installations }: ReleaseFacts, holders: Holders): OpenItem[] {
  return workOrder.findings.flatMap((finding) => {
    const subject = { kind: 'finding', id: finding.id };
    if (finding.disposition === null) {
      return [
        item('finding', `${finding.number} has no disposition`, {
          people: holders.get('dimensional-inspection inspect') ?? [],
          subject,
        }),
      ];
    }
    if (finding.disposition === 'reject' && finding.traveler.partClass === 'assembly') {
      return [item('finding', `${finding.number} rejected the unit itself`, { role: 'front-desk', subject })];
    }
    if (finding.disposition === 'reject') {
      const filled = installations.some(({ position }) => position === finding.traveler.position);
      return filled
        ? []
        : [
            item('position', `${finding.number}: nothing is on record at ${finding.traveler.position}`, {
              role: 'technician',
              subject,
            }),
          ];
    }
    const redone = steps.filter((step) => step.findingId === finding.id && step.state === 'failed');
    const unanswered = redone.filter(({ id }) => !workOrder.findings.some(({ stepId }) => stepId === id));
    return unanswered.map((step) =>
      item('finding', `${finding.number}: “${step.title}” failed`, { role: 'inspector', subject }),
    );
  });
}

async function kitItems(tx: Tx, { workOrder }: ReleaseFacts): Promise<OpenItem[]> {
  const kit = workOrder.kits[0];
  const sentences = await openOfKits(tx, workOrder.id);
  return sentences.map((sentence) =>
    item('kit', sentence, { role: 'technician', subject: kit ? { kind: 'kit', id: kit.id } : null }),
  );
}

/** Instruments that measured this unit and are past calibration today: nobody knows whether they were good. */
async function overdueGauges(tx: Tx, { signOffs }: ReleaseFacts, today: string): Promise<OpenItem[]> {
  const ids = [...new Set(signOffs.flatMap(({ instrumentId }) => instrumentId ?? []))];
  const gauges = await tx.instrument.findMany({
    where: { id: { in: ids }, calibrationDueOn: { lt: toDbDate(today) } },
    orderBy: { tag: 'asc' },
  });
  return gauges.map((gauge) =>
    item(
      'instrument',
      `${gauge.tag} measured this unit and is past calibration since ${fromDbDate(gauge.calibrationDueOn)}`,
      { role: 'inspector', subject: { kind: 'instrument', id: gauge.id } },
    ),
  );
}

async function holdersOn(tx: Tx, today: string): Promise<Holders> {
  const day = toDbDate(today);
  const held = await tx.authorisation.findMany({
    where: {
      validFrom: { lte: day },
      person: { active: true },
      AND: [
        { OR: [{ expiresOn: null }, { expiresOn: { gt: day } }] },
        { OR: [{ revokedOn: null }, { revokedOn: { gt: day } }] },
      ],
    },
    select: { process: true, level: true, person: { select: { displayName: true } } },
    orderBy: { person: { displayName: 'asc' } },
    take: 5000,
  });
  const holders = new Map<string, string[]>();
  for (const { process, level, person } of held) {
    const key = `${process} ${level}`;
    const names = holders.get(key) ?? [];
    if (!names.includes(person.displayName)) holders.set(key, [...names, person.displayName]);
  }
  return holders;
}
