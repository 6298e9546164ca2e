import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { kitLocks } from './kit.ts';
import { scrapScanned } from './scrap-scanned.ts';
import { refuseUnseen, witnessNeeded } from './witness-needed.ts';

/** Damaged at the bench: the pieces are scrapped, and their line asks stock for new ones. */
export const scrapFromTray = defineCommand(kitsOperations.scrapFromTray, {
  locks: (input, tx) => kitLocks(tx, input.kitId, { code: input.lotCode }),
  async execute(context) {
    const { done } = await scrapScanned(context, async (held, kit) =>
      refuseUnseen(held, await witnessNeeded(context, kit)),
    );
    return { ...done, reason: context.input.reason };
  },
});
