import type { partOperations } from '@hubwright/contracts/inventory/part-operations';
import type { Input } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { Tx } from '../../platform/database/client.ts';
import { toDbDate } from '../../platform/database/dates.ts';

type Given = Input<typeof partOperations.setAlternates>['alternates'][number];

/** A number alone: it may stand in from now on, one way. */
export function fromNow(number: string): Given {
  return { number, twoWay: false, supersedes: false, effectivity: 'now' };
}

/**
 * Replaces the parts that may stand in for `part`, best first. Throws `unknown-part` for a number that does not exist,
 * `alternates-loop` when one of them leads back to this part, also through a chain, and `superseded-twice`. The caller holds the
 * lock `alternates`.
 */
export async function saveAlternates(
  context: { tx: Tx; newId(): string },
  part: { id: string; number: string },
  given: readonly Given[],
): Promise<void> {
  const { tx } = context;
  await tx.partAlternate.deleteMany({ where: { partId: part.id } });
  if (given.length === 0) return;
  const numbers = given.map(({ number }) => number);
  refuseTwice(part.number, given);
  const uses = await tx.part.findMany({ where: { number: { in: [...numbers] } }, select: { id: true, number: true } });
  const byNumber = new Map(uses.map((use) => [use.number, use.id]));
  const unknown = numbers.flatMap((number, index) =>
    byNumber.has(number) ? [] : [{ pointer: `/alternates/${index}`, detail: `There is no part ${number}` }],
  );
  if (unknown.length > 0)
    throw new Problem('unknown-part', unknown.map(({ detail }) => detail).join('; '), {}, unknown);
  if (byNumber.has(part.number)) throw loop(part.number, part.number);
  await tx.partAlternate.createMany({
    data: [...new Map(given.map((each) => [each.number, each])).values()].map(({ number, from, ...link }, index) => ({
      ...link,
      id: context.newId(),
      partId: part.id,
      useId: byNumber.get(number) as string,
      preference: index + 1,
      fromDate: from ? toDbDate(from) : null,
    })),
  });
  await refuseLoop(tx, part);
}

function refuseTwice(number: string, given: readonly Given[]): void {
  const superseding = given.filter(({ supersedes }) => supersedes).map((each) => each.number);
  if (superseding.length > 1)
    throw new Problem('superseded-twice', `${number} is superseded by ${superseding.join(' and ')}`, { superseding });
}

async function refuseLoop(tx: Tx, part: { id: string; number: string }): Promise<void> {
  const [back] = await tx.$queryRaw<{ number: string }[]>`
    WITH RECURSIVE reach(id) AS (
      SELECT use_id FROM part_alternates WHERE part_id = ${part.id}::uuid
      UNION SELECT a.use_id FROM reach r JOIN part_alternates a ON a.part_id = r.id
    )
    SELECT p.number FROM part_alternates a JOIN reach r ON r.id = a.part_id JOIN parts p ON p.id = a.part_id
    WHERE a.use_id = ${part.id}::uuid LIMIT 1`;
  if (back) throw loop(part.number, back.number);
}

function loop(number: string, back: string): Problem {
  return new Problem('alternates-loop', `${number} would stand in for itself by way of ${back}`, {
    part: number,
    back,
  });
}
