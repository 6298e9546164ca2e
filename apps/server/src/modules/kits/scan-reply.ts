import { askIn } from './ask.ts';
import type { Held } from './held.ts';
import { type Kit, type KitContext, kitSubjects, touchKit } from './kit.ts';
import { figuresOf, toPull } from './line-figures.ts';

/** Ends a command that moved one scanned lot: counts up the kit and says what each line now still needs from stock. */
export async function scanned(
  { tx }: KitContext,
  kit: Kit,
  done: { lotCode: string; held: readonly Held[]; movementIds: string[]; did: string },
) {
  const reply = await touchKit(tx, kit);
  const figures = await figuresOf(askIn(tx), [kit.id]);
  const tornDown = kit.lines.some(({ id }) => figures(id).cameOn > 0);
  const lines = done.held.flatMap(({ lineId, quantity }) => {
    const line = kit.lines.find(({ id }) => id === lineId);
    if (!line) return [];
    const stillNeeds = toPull(line, figures(line.id), tornDown);
    return [{ lineId: line.id, position: line.position, quantity, stillNeeds }];
  });
  return {
    reply: { ...reply, lotCode: done.lotCode, lines, movementIds: done.movementIds },
    subjects: kitSubjects(
      kit,
      reply.version,
      done.held.map(({ lotId }) => lotId),
    ),
    facts: { kit: kit.code, lot: done.lotCode, did: done.did, lines },
  };
}
