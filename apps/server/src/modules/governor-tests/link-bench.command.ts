import { benchLinkOperations } from '@hubwright/contracts/governor-tests/link-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { isInsideShop } from './private-address.ts';

export const linkBench = defineCommand(benchLinkOperations.linkBench, {
  locks: ({ instrumentId }) => [`instrument:${instrumentId}`],
  async execute({ tx, input, expectedVersion }) {
    const { instrumentId, host, port } = input;
    const bench = found(
      await tx.instrument.findUnique({ where: { id: instrumentId }, include: { benchLink: true } }),
      'This instrument',
    );
    sameVersion(bench.benchLink?.version ?? 0, expectedVersion);
    if (bench.kind !== 'governor-bench')
      throw new Problem('instrument-wrong', `${bench.tag} is a ${bench.kind}; only a governor bench sends readings`);
    if (!isInsideShop(host, port)) {
      const detail = `${host} port ${port} is not inside the shop`;
      throw new Problem('address-outside', detail, {}, [{ pointer: '/host', detail }]);
    }
    const version = (bench.benchLink?.version ?? 0) + 1;
    const link = { host, port, version };
    await tx.benchLink.upsert({ where: { instrumentId }, create: { instrumentId, ...link }, update: link });
    return {
      reply: { id: instrumentId, version },
      subjects: [{ kind: 'instrument', id: instrumentId }],
      facts: { tag: bench.tag, host, port },
    };
  },
});
