import { Problem } from '@hubwright/contracts/problems';
import type { Tx } from '../../platform/database/client.ts';

/**
 * Replaces the parts that may stand in for `part`, best first. Throws `unknown-part` for a number that does not exist and
 * `alternates-loop` when one of them leads back to this part. The caller holds the lock `alternates`.
 */
export async function saveAlternates(
  context: { tx: Tx; newId(): string },
  part: { id: string; number: string },
  numbers: readonly string[],
): Promise<void> {
  const { tx } = context;
  await tx.partAlternate.deleteMany({ where: { partId: part.id } });
  if (numbers.length === 0) return;
  const uses = await tx.part.findMany({ where: { number: { in: [...numbers] } }, select: { id: true, number: true } });
  const byNumber = new Map(uses.map((use) => [use.number, use.id]));
  const unknown = numbers.flatMap((number, index) =>
    byNumber.has(number) ? [] : [{ pointer: `/alternates/${index}`, detail: `There is no part ${number}` }],
  );
  if (unknown.length > 0)
    throw new Problem('unknown-part', unknown.map(({ detail }) => detail).join('; '), {}, unknown);
  if (byNumber.has(part.number)) throw loop(part.number, part.number);
  await tx.partAlternate.createMany({
    data: [...new Set(numbers)].map((number, index) => ({
      id: context.newId(),
      partId: part.id,
      useId: byNumber.get(number) as string,
      preference: index + 1,
    })),
  });
  await refuseLoop(tx, part);
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
