import { destroyOperations } from '@hubwright/contracts/kits/destroy-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { refuseOwnWitness, writeStockSignature } from '../inventory/public.ts';
import { kitLocks } from './kit.ts';
import { scrapScanned } from './scrap-scanned.ts';

const operation = destroyOperations.destroyFromTray;

/** The same as scrapping from the tray, for pieces whose end somebody else must have seen; both sign one content. */
export const destroyFromTray = defineCommand(operation, {
  locks: (input, tx) => kitLocks(tx, input.kitId, { code: input.lotCode }),
  async execute(context) {
    const { input, actor } = context;
    refuseOwnWitness(input.witnessId, actor);
    const { done, held, kit } = await scrapScanned(context);
    const [first] = held;
    const { quantity, reason, lotCode } = input;
    const content = { code: lotCode, part: first?.part.number, quantity, from: `tray of ${kit.code}`, reason };
    const contentHash = await writeStockSignature(context, {
      ...{ lotId: first?.lotId ?? '', kind: 'scrapped', content },
      ...{ meaning: operation.signs ?? '', witnessMeaning: operation.witnessed ?? '' },
    });
    return { ...done, facts: { ...done.facts, witness: input.witnessId, contentHash }, reason };
  },
});
