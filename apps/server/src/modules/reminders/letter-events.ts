import type { Context } from '../../platform/command/command.ts';

type Writing = Pick<Context<never>, 'tx' | 'newId' | 'now' | 'entryId'> & {
  readonly actor: { readonly personId: string };
};

/** What happened to letters, one row each. */
export async function tellOfLetters(
  { tx, newId, now, entryId, actor }: Writing,
  letterIds: readonly string[],
  { what, detail }: { what: string; detail: string },
): Promise<void> {
  await tx.reminderEvent.createMany({
    data: letterIds.map((letterId) => ({
      ...{ id: newId(), letterId, what, detail, personId: actor.personId, at: now, entryId },
    })),
  });
}
