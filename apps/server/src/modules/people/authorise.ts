import type { AuthorisationLevel } from '@hubwright/contracts/people/authorisation-levels';
import type { Level, Process } from '@hubwright/contracts/people/operations';
import { Problem } from '@hubwright/contracts/problems';
import { trainingOn } from '@hubwright/rules/training';
import type { Actor } from '../../platform/command/actor.ts';
import type { HeldAuthorisation } from './held-authorisation.ts';
import { type Holder, holdersOf, inForceOn, namedInspectors } from './holders.ts';
import { type AuthorisationReads, gapsInWords, linesOf } from './training-gaps.ts';

export interface Need {
  readonly process: Process;
  readonly level: Level;
  readonly today: string;
  /** It is an inspection, whatever the level: the shop may have named who does it. */
  readonly inspecting?: boolean;
}

/** Under which authorisation something is signed, and who supervised it where that is a trainee's. */
export interface Authorised {
  readonly authorisation: HeldAuthorisation;
  readonly supervisor?: { readonly personId: string; readonly authorisation: HeldAuthorisation };
}

/**
 * The actor's authorisation for a process and level on a day. Throws `not-authorised` naming who holds one, `training-run-out`
 * when training keeps it from being current, `not-on-inspection-list` when the shop names others to inspect.
 */
export async function requireAuthorisation(
  reads: AuthorisationReads,
  actor: Actor,
  need: Need,
): Promise<HeldAuthorisation> {
  return ownOf(await whoMay(reads, need), actor, need);
}

/**
 * The same where a trainee may do it under supervision: then the supervisor, who is authorised for the work and is not the trainee,
 * stands beside. Throws `supervisor-missing`, `supervisor-wrong` or `supervisor-not-needed` naming who may supervise.
 */
export async function requireSupervised(
  reads: AuthorisationReads,
  actor: Actor,
  need: Need & { supervisorId: string | undefined },
): Promise<Authorised> {
  const { process, today, supervisorId } = need;
  const may = await whoMay(reads, need);
  const isOwn = may.current.some(({ personId }) => personId === actor.personId);
  if (isOwn && supervisorId !== undefined)
    throw new Problem('supervisor-not-needed', `You are authorised for “${process}” yourself`, { process });
  if (isOwn || need.level !== 'perform' || need.inspecting) return { authorisation: ownOf(may, actor, need) };
  const trainees = await holdersOf(reads, { process, level: 'trainee', today });
  const trainee = trainees.find(({ personId }) => personId === actor.personId);
  if (!trainee) return { authorisation: ownOf(may, actor, need) };
  const supervisor = may.current.find(({ personId }) => personId === supervisorId);
  if (!supervisor) throw unsupervised(need, may.current);
  const { personId, authorisation } = supervisor;
  return { authorisation: trainee.authorisation, supervisor: { personId, authorisation } };
}

/** What a person may use today, as `process level`; whatever training or a list of inspectors keeps from being used is left out. */
export async function usableBy(reads: AuthorisationReads, personId: string, today: string): Promise<Set<string>> {
  const held = await reads.authorisation.findMany({
    where: { personId, ...inForceOn(today) },
    select: { process: true, level: true },
  });
  const [items, lists] = await Promise.all([
    reads.trainingItem.findMany({
      where: { active: true, processes: { hasSome: held.map(({ process }) => process) } },
    }),
    reads.inspectionList.findMany({ take: 100 }),
  ]);
  const itemIds = items.map(({ id }) => id);
  const lines = await linesOf(reads, { personIds: [personId], itemIds, day: today });
  const lapsed = items.filter(({ id }) => !trainingOn(lines.get(`${personId} ${id}`) ?? [], today).current);
  const isTrained = (process: string) => !lapsed.some(({ processes }) => processes.includes(process));
  const isNamed = (process: string) => {
    const named = lists.find((list) => list.process === process)?.personIds ?? [];
    return named.length === 0 || named.includes(personId);
  };
  const usable = held.filter(
    ({ process, level }) => level === 'trainee' || (isTrained(process) && (level !== 'inspect' || isNamed(process))),
  );
  return new Set(usable.map(({ process, level }) => `${process} ${level}`));
}

/** Names of everyone who may do this today, but for those left out: for a refusal that says whom to ask. */
export async function namesOfAble(
  reads: AuthorisationReads,
  need: Need,
  without: ReadonlySet<string>,
): Promise<string[]> {
  const { current } = await whoMay(reads, need);
  return current.filter(({ personId }) => !without.has(personId)).map(({ name }) => name);
}

interface WhoMay {
  readonly current: readonly Holder[];
  /** Authorised, but training has run out. */
  readonly lapsed: readonly Holder[];
  /** Authorised and trained, but the shop names others to inspect. */
  readonly unnamed: readonly Holder[];
}

async function whoMay(reads: AuthorisationReads, need: Need): Promise<WhoMay> {
  const holders = await holdersOf(reads, need);
  const isInspection = need.level === 'inspect' || need.inspecting === true;
  const named = isInspection ? await namedInspectors(reads, need.process) : undefined;
  const trained = holders.filter(({ missing }) => missing.length === 0);
  const isNamed = ({ personId }: Holder) => named?.includes(personId) ?? true;
  return {
    current: trained.filter(isNamed),
    lapsed: holders.filter(({ missing }) => missing.length > 0),
    unnamed: trained.filter((holder) => !isNamed(holder)),
  };
}

function ownOf(may: WhoMay, { personId }: Actor, need: Need): HeldAuthorisation {
  const isOwn = (holder: Holder) => holder.personId === personId;
  const own = may.current.find(isOwn);
  if (own) return own.authorisation;
  const holders = may.current.map(({ name }) => name);
  const facts = { process: need.process, level: need.level, holders };
  const lapsed = may.lapsed.find(isOwn);
  if (lapsed)
    throw new Problem(
      'training-run-out',
      `Your authorisation “${need.process}, ${need.level}” is not current: ${gapsInWords(lapsed.missing)}${heldBy(holders)}`,
      { ...facts, missing: lapsed.missing },
    );
  if (may.unnamed.some(isOwn))
    throw new Problem(
      'not-on-inspection-list',
      `The shop names who inspects “${need.process}”${heldBy(holders)}`,
      facts,
    );
  throw new Problem(
    'not-authorised',
    `This needs the authorisation “${need.process}, ${need.level}”${heldBy(holders)}`,
    facts,
  );
}

function heldBy(holders: readonly string[]): string {
  return holders.length > 0 ? `, held by ${holders.join(', ')}` : ', which nobody holds today';
}

function unsupervised(
  { process, supervisorId }: { process: string; supervisorId: string | undefined },
  may: readonly Holder[],
) {
  const supervisors = may.map(({ name }) => name);
  const who = supervisors.length > 0 ? `${supervisors.join(', ')} may supervise it` : 'nobody may supervise it today';
  return supervisorId === undefined
    ? new Problem(
        'supervisor-missing',
        `You do “${process}” as a trainee; ${who}`,
        { process, level: 'trainee' satisfies AuthorisationLevel, supervisors },
        [{ pointer: '/supervisorId', detail: 'Say who supervised the work' }],
      )
    : new Problem(
        'supervisor-wrong',
        `That person is not authorised to do “${process}”; ${who}`,
        { process, supervisors },
        [{ pointer: '/supervisorId', detail: 'Choose someone who is authorised for it' }],
      );
}
