import { benchLinkOperations } from '@hubwright/contracts/governor-tests/link-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';

export const unlinkBench = defineCommand(benchLinkOperations.unlinkBench, {
  locks: ({ instrumentId }) => [`instrument:${instrumentId}`],
  async execute({ tx, input: { instrumentId }, expectedVersion }) {
    const bench = found(
      await tx.instrument.findUnique({ where: { id: instrumentId }, include: { benchLink: true } }),
      'This instrument',
    );
    const link = bench.benchLink;
    if (!link) throw new Problem('bench-not-linked', `${bench.tag} sends no readings`);
    sameVersion(link.version, expectedVersion);
    await tx.benchLink.delete({ where: { instrumentId } });
    return {
      reply: { id: instrumentId, version: 0 },
      subjects: [{ kind: 'instrument', id: instrumentId }],
      facts: { tag: bench.tag, host: link.host, port: link.port, linked: false },
    };
  },
});
