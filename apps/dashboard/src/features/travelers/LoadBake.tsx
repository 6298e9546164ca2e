import type { SheetOf } from '@hubwright/contracts/manuals/sheets';
import { RuleError } from '@hubwright/rules/errors';
import { StateMark } from '../../ui/StateMark.tsx';
import { BakeActions } from './bake-actions.tsx';
import type { Load, LoadPart } from './loads.ts';
import { BakeChart, type BakeDraft } from './sheets/BakeChart.tsx';
import { bakeEntryOf, bakeVerdict } from './sheets/bake-form.ts';

/** What the one chart says of each part by its own plating, and the entry of all; nothing where the load is no bake. */
export function judgedLoad({ sheet, parts }: Load, draft: BakeDraft) {
  if (sheet?.kind !== 'bake') return { entry: undefined, bad: [], missing: '' };
  const entry = bakeEntryOf(draft, firstToBegin(parts)?.bake ?? null);
  if (!entry) return { entry, bad: [], missing: 'the chart of the bake is not entered' };
  try {
    const bad = parts.flatMap((part) => {
      const reasons = bakeVerdict(entry, { spec: sheet, clock: part.bake })?.reasons ?? [];
      return reasons.length > 0 ? [{ part, reasons }] : [];
    });
    return { entry, bad, missing: '' };
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    return { entry: undefined, bad: [], missing: error.message };
  }
}

/** The part whose bake must begin first: the clock of the load. */
function firstToBegin(parts: readonly LoadPart[]): LoadPart | undefined {
  const plated = parts.filter(({ bake }) => bake !== null);
  return plated.sort((a, b) => (a.bake?.platedAt ?? '').localeCompare(b.bake?.platedAt ?? ''))[0];
}

/** The oven side of a load: when it went in, its one chart, and which parts that is not good for. */
export function LoadBake({
  load,
  spec,
  draft,
  onChange,
}: {
  load: Load;
  spec: SheetOf<'bake'>;
  draft: BakeDraft;
  onChange: (draft: BakeDraft) => void;
}) {
  const clock = firstToBegin(load.parts)?.bake ?? null;
  const { bad, missing, entry } = judgedLoad(load, draft);
  return (
    <div className="stack">
      {clock ? (
        <div className="row">
          <BakeActions which={{ loadId: load.id }} clock={clock} name={load.number} />
        </div>
      ) : null}
      <BakeChart spec={spec} clock={clock} draft={draft} onChange={onChange} />
      <div aria-live="polite" className="stack tight">
        {bad.map(({ part, reasons }) => (
          <p key={part.stepId}>
            <StateMark
              state="stop"
              word={`${part.travelerNumber} ${part.position}: ${reasons.join(' ')} Take it out.`}
            />
          </p>
        ))}
        {entry && bad.length === 0 ? <StateMark state="passed" word="good as entered, for every part" /> : null}
        {!entry && draft.chart !== '' ? <p className="small">{missing}</p> : null}
      </div>
    </div>
  );
}
