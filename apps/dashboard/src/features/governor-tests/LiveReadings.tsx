import { benchLinkOperations } from '@hubwright/contracts/governor-tests/link-operations';
import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import { RuleError } from '@hubwright/rules/errors';
import { type BenchUnit, inUnit } from '@hubwright/rules/governor';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { queryFor } from '../../api/query.ts';
import { Button } from '../../ui/Button.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { FormProblem } from '../../ui/FormProblem.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { say } from '../../ui/toasts.tsx';
import styles from './governor.module.css';
import { type Point, type Run, unitWord } from './governor.ts';
import { OilField } from './OilField.tsx';
import { type OilRead, oilInput } from './oil.ts';

const everySecond = 1_000;
const states = {
  'not-linked': { state: 'note', word: 'sends nothing' },
  connecting: { state: 'waiting', word: 'connecting' },
  connected: { state: 'passed', word: 'connected' },
  waiting: { state: 'stop', word: 'not connected' },
} as const;

/** In the unit of the point, or null where it measures something else. */
function converted(point: Point, { value, unit }: { value: number; unit: string }): number | null {
  try {
    return inUnit(value, unit as BenchUnit, point.unit);
  } catch (error) {
    if (error instanceof RuleError) return null;
    throw error;
  }
}

/** What the bench sends, second by second. It is only offered: a reading is kept when somebody takes it for the point in turn. */
export function LiveReadings(props: { run: Run; point: Point; onTaken: () => void }) {
  const { run, point } = props;
  const live = useQuery({
    ...queryFor(benchLinkOperations.liveBenchReadings, { instrumentId: run.bench.id }),
    refetchInterval: everySecond,
    staleTime: 0,
  }).data;
  const command = useCommand(governorOperations.takeInstrumentReading);
  const [unitChecked, setChecked] = useState(false);
  const [oil, setOil] = useState<OilRead>({ value: '', unit: run.program.content.oil.unit });
  if (!live) return null;
  const isDoubtful = command.error?.type === 'unit-doubtful' || unitChecked;
  const isByEye = run.program.content.oil.channel === undefined;
  const oilByEye = isByEye && oil.value !== '' ? oilInput(oil) : {};
  const take = (channel: string, at: string) =>
    command.mutate(
      { input: { runId: run.id, point: point.name, channel, at, unitChecked, ...oilByEye } },
      {
        onSuccess: ({ value, pass }) => {
          setChecked(false);
          props.onTaken();
          say(`${point.name} ${value} ${unitWord(point.unit)} from ${run.bench.tag}: ${pass ? 'good' : 'out'}.`);
        },
      },
    );
  return (
    <section className="stack tight" aria-label={`Readings of ${run.bench.tag}`}>
      <p className="row">
        <strong>{run.bench.tag} sends</strong> <StateMark {...states[live.state]} />
        <span className="soft small">
          {live.trouble ?? ''}
          {live.refused > 0 ? ` ${live.refused} lines were no readings: ${live.lastRefused}` : ''}
        </span>
      </p>
      <div className={styles.channels}>
        {live.channels.map(({ channel, value, unit, at, age, fresh }) => {
          const here = converted(point, { value, unit });
          const fits = here !== null && (point.channel === undefined || point.channel === channel);
          return [
            <span key={`${channel} name`}>
              {channel}
              {fresh ? '' : <span className="soft small"> {Math.round(age / 1000)} s old</span>}
            </span>,
            <strong key={`${channel} value`}>
              {value} {unitWord(unit)}
              {fits && unit !== point.unit ? ` = ${here.toFixed(point.decimals + 1)} ${unitWord(point.unit)}` : ''}
            </strong>,
            <Button
              key={`${channel} take`}
              isDisabled={!fits || !fresh || command.isPending}
              onPress={() => take(channel, at)}
              aria-label={`Take ${channel} for ${point.name}`}
            >
              Take
            </Button>,
          ];
        })}
      </div>
      {isDoubtful ? (
        <Checkbox isSelected={unitChecked} onChange={setChecked}>
          I looked at the instrument: its unit is right
        </Checkbox>
      ) : null}
      <form>
        {isByEye ? <OilField run={run} oil={oil} onOil={setOil} /> : null}
        <FormProblem problem={command.error} />
      </form>
    </section>
  );
}
