import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import type { AsRead } from '@hubwright/contracts/governor-tests/run';
import { Problem } from '@hubwright/contracts/problems';
import { type Command, type Context, defineCommand } from '../../platform/command/command.ts';
import type { BenchStreams } from './bench-streams.ts';
import type { Arrived } from './instrument-stream.ts';
import { contentOf } from './program.ts';
import { type Run, runLocks, runToGoOn, subjectsOf } from './run.ts';
import { judgeGiven, writeReadings } from './write-readings.ts';

const operation = governorOperations.takeInstrumentReading;
type Taking = Context<typeof operation>;

/** The server takes its own copy of what the bench sent, never a number from the page; only a fresh one, and the one that was seen. */
export function takeInstrumentReading(streams: BenchStreams): Command<typeof operation> {
  return defineCommand(operation, {
    locks: ({ runId }, tx) => runLocks(tx, runId),
    async execute(context) {
      const { tx, input } = context;
      const { run, authorisation } = await runToGoOn(context, input.runId);
      const link = await tx.benchLink.findUnique({ where: { instrumentId: run.benchId } });
      if (!link) throw new Problem('bench-not-linked', `${run.bench.tag} sends no readings`);
      refuseOtherChannel(run, input);
      const arrived = streams.fresh(link, input.channel);
      if (!arrived || arrived.at < input.at) throw stale(input.channel);
      const asRead = asReadOf(context, arrived, oilOf(context, run, streams));
      const judged = judgeGiven(run, { point: input.point, asRead, source: 'instrument' });
      const { version, open, out } = await writeReadings(context, run, [judged]);
      return {
        reply: { id: run.id, version, pass: judged.pass, value: judged.value, open, out },
        subjects: subjectsOf(run),
        authorisation: { ...authorisation },
        facts: { number: run.number, ...judged },
      };
    },
  });
}

function refuseOtherChannel(run: Run, { point, channel }: Taking['input']): void {
  const asked = contentOf(run).points.find(({ name }) => name === point)?.channel;
  if (asked === undefined || asked === channel) return;
  const detail = `${point} is measured by the channel ${asked}`;
  throw new Problem('invalid-input', detail, {}, [{ pointer: '/channel', detail }]);
}

/** The oil by its channel where the program names one, else as it was read by eye. */
function oilOf({ input }: Taking, run: Run, streams: BenchStreams): { value: string; unit: AsRead['oilUnit'] } {
  const { channel } = contentOf(run).oil;
  if (channel !== undefined) {
    const oil = streams.fresh({ instrumentId: run.benchId }, channel);
    if (!oil) throw stale(channel);
    return { value: plain(oil.value), unit: oil.unit };
  }
  if (input.oilTemperature !== undefined && input.oilUnit !== undefined)
    return { value: input.oilTemperature, unit: input.oilUnit };
  const detail = 'Read the oil temperature: no channel measures it';
  throw new Problem('invalid-input', detail, {}, [{ pointer: '/oilTemperature', detail }]);
}

function asReadOf({ input }: Taking, { value, unit, channel, at }: Arrived, oil: ReturnType<typeof oilOf>): AsRead {
  const { unitChecked } = input;
  return { value: plain(value), unit, oilTemperature: oil.value, oilUnit: oil.unit, unitChecked, channel, at };
}

function stale(channel: string): Problem {
  return new Problem('reading-stale', `Nothing newer than two seconds came on ${channel}`, { channel });
}

/** At most eight places, as a decimal in this system has. */
function plain(value: number): string {
  return value.toFixed(8).replace(/\.?0+$/, '');
}
