import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import { unitsBeside } from '@hubwright/rules/governor';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { LimitGauge } from '../../ui/pictures/LimitGauge.tsx';
import { Select } from '../../ui/Select.tsx';
import { say } from '../../ui/toasts.tsx';
import { acceptedPoint, type Point, type Run, shownLimits, unitWord, verdictOf } from './governor.ts';
import { OilField } from './OilField.tsx';
import { type OilRead, oilInput } from './oil.ts';

/** The point in turn: its reading large, the unit the gauge shows, its limits beside it. Kept at once, and nothing is filled in before. */
export function TakeReading(props: { run: Run; point: Point; onTaken: () => void }) {
  const { run, point } = props;
  const command = useCommand(governorOperations.takeGovernorReading);
  const [value, setValue] = useState('');
  const [unit, setUnit] = useState(point.unit);
  const [unitChecked, setChecked] = useState(false);
  const [oil, setOil] = useState<OilRead>({ value: '', unit: run.program.content.oil.unit });
  const accepted = acceptedPoint(run, point);
  const verdict = verdictOf({ accepted, printed: point }, value, { unit, unitChecked });
  const isDoubtful = verdict.kind === 'doubtful' || unitChecked;
  const shown = verdict.kind === 'good' || verdict.kind === 'out' ? verdict.value : null;
  const units = unitsBeside(point.unit).map((each) => ({ value: each, text: unitWord(each) }));
  return (
    <CommandForm
      problem={command.error}
      isPending={command.isPending}
      submit="Keep this reading"
      onSubmit={() =>
        command.mutate(
          { input: { runId: run.id, point: point.name, value, unit, unitChecked, ...oilInput(oil) } },
          {
            onSuccess: (reply) => {
              props.onTaken();
              say(`${point.name} ${reply.value} ${unitWord(point.unit)}: ${reply.pass ? 'good' : 'out'}.`);
            },
          },
        )
      }
    >
      <div className="row">
        <DecimalField
          name="value"
          label={point.name}
          hint={shownLimits(run, point)}
          {...(units.length > 1 ? {} : { unit: unitWord(point.unit) })}
          decimals={point.decimals + 2}
          value={value}
          onChange={setValue}
          isRequired
        />
        {units.length > 1 ? (
          <Select
            name="unit"
            label="Unit on the gauge"
            value={unit}
            onChange={(chosen) => {
              setUnit(chosen);
              setChecked(false);
            }}
            choices={units}
            isRequired
          />
        ) : null}
      </div>
      <p className="row" aria-live="polite">
        <LimitGauge
          value={shown === null ? null : String(shown)}
          low={accepted.low ?? null}
          high={accepted.high ?? null}
          unit={unitWord(point.unit)}
        />
        <span className="soft small">
          {shown !== null && unit !== point.unit ? `${shown.toFixed(point.decimals + 1)} ${unitWord(point.unit)}` : ''}
          {verdict.kind === 'impossible' || verdict.kind === 'doubtful' ? verdict.why : ''}
        </span>
      </p>
      {isDoubtful ? (
        <Checkbox isSelected={unitChecked} onChange={setChecked}>
          I looked at the gauge again: it shows {unitWord(unit)}
        </Checkbox>
      ) : null}
      <OilField run={run} oil={oil} onOil={setOil} />
    </CommandForm>
  );
}
