import { fieldBalanceOperations as op } from '@hubwright/contracts/field-balance/operations';
import type { FieldRun } from '@hubwright/contracts/field-balance/shapes';
import { useMay } from '../../api/me.ts';
import { Button } from '../../ui/Button.tsx';
import { countingRuns, type FieldBalance } from './field-balance.ts';

export type Doing = 'set-up' | FieldRun['kind'] | 'fit' | 'sign' | 'release' | 'abandon';

interface Act {
  readonly doing: Doing;
  readonly words: string;
}

/** What can be done now, the one next thing first. */
function actsOf(balance: FieldBalance, may: { do: boolean; release: boolean }): Act[] {
  const { state, open } = balance;
  if (state === 'balanced') {
    const again = may.do ? [{ doing: 'check' as const, words: 'Run again' }] : [];
    return may.release ? [{ doing: 'release', words: 'Release with the log entry' }, ...again] : again;
  }
  if (!may.do || state === 'released' || state === 'abandoned') return [];
  if (state === 'planned') return balance.spec ? [{ doing: 'set-up', words: 'Fill in the sheet before any run' }] : [];
  const runs = countingRuns(balance);
  const renew: Act = { doing: 'set-up', words: 'New sheet: another day or set-up' };
  if (runs.length === 0) return [{ doing: 'baseline', words: 'Put the baseline on record' }, renew];
  const all: Act[] = [
    { doing: 'trial', words: 'Trial run' },
    { doing: 'fit', words: 'Fit weights' },
    { doing: 'check', words: 'Run with the weights as they stand' },
    ...(runs.every(({ kind }) => kind === 'baseline')
      ? [{ doing: 'baseline' as const, words: 'Baseline once more' }]
      : []),
    renew,
  ];
  const next: Act =
    open.length === 0
      ? { doing: 'sign', words: 'It is balanced: sign' }
      : (all.find(({ doing }) => doing === (state === 'weights-fitted' ? 'check' : balance.answer ? 'fit' : 'trial')) ??
        renew);
  return [next, ...all.filter((act) => act !== next)];
}

/** The one next thing as a button, and what else can be done. */
export function NextStep({ balance, onDo }: { balance: FieldBalance; onDo: (doing: Doing) => void }) {
  const may = { do: useMay(op.signFieldSetUp), release: useMay(op.releaseFieldBalance) };
  const mayAbandon = useMay(op.abandonFieldBalance) && !['balanced', 'released', 'abandoned'].includes(balance.state);
  const [next, ...others] = actsOf(balance, may);
  return (
    <div className="stack tight">
      {balance.open.map((what) => (
        <p key={what} className="small">
          {what}.
        </p>
      ))}
      <div className="row no-print">
        {next ? (
          <Button weight="next" onPress={() => onDo(next.doing)}>
            {next.words}
          </Button>
        ) : null}
        {others.map(({ doing, words }) => (
          <Button key={doing} onPress={() => onDo(doing)}>
            {words}
          </Button>
        ))}
        {mayAbandon ? (
          <Button weight="quiet" onPress={() => onDo('abandon')}>
            Abandon
          </Button>
        ) : null}
      </div>
    </div>
  );
}
