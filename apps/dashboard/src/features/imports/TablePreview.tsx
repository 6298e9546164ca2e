import { useState } from 'react';
import { countOf } from '../../format/numbers.ts';
import { Button } from '../../ui/Button.tsx';
import { InlineSelect } from '../../ui/InlineSelect.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { say } from '../../ui/toasts.tsx';
import styles from './imports.module.css';
import { MappingFields } from './MappingFields.tsx';
import { PreviewTable } from './PreviewTable.tsx';
import { type Mapping, type Preview, tableTitles, titleOf, useApply, usePreview, type Whose } from './preview.ts';

const shownChoices = [
  { value: 'all', text: 'all rows' },
  { value: 'wrong', text: 'wrong rows' },
  { value: 'new', text: 'new rows' },
  { value: 'changed', text: 'changed rows' },
  { value: 'same', text: 'rows on record already' },
] as const;
type Shown = (typeof shownChoices)[number]['value'];

function Counts({ counts }: { counts: Preview['counts'] }) {
  return (
    <div className={styles.counts} role="status">
      <StateMark state="have" word={`${countOf(counts.new, 'row')} new`} />
      <StateMark state="note" word={`${countOf(counts.changed, 'row')} changed`} />
      <StateMark state="open" word={`${countOf(counts.same, 'row')} the same`} />
      <StateMark state={counts.wrong > 0 ? 'stop' : 'passed'} word={`${countOf(counts.wrong, 'row')} wrong`} />
    </div>
  );
}

/** Why it cannot be taken over yet, in one sentence; nothing when it can. */
function whyNot({ kind, counts, missing }: Preview): string | undefined {
  if (missing.length > 0)
    return `Say which column is the ${missing.map((field) => titleOf(kind, field)).join(', the ')}.`;
  if (counts.wrong > 0)
    return 'Mend the wrong rows in the file and choose it again: a table is taken over whole, or not at all.';
  return counts.new + counts.changed === 0 ? 'Everything in this table is on record already.' : undefined;
}

/** A table that was sent: its columns, every row, and the one button that takes it over. */
export function TablePreview(props: { whose: Whose; importId: string; onApplied: () => void; onClose: () => void }) {
  const { whose, importId, onApplied, onClose } = props;
  const [mapping, setMapping] = useState<Mapping>();
  const [only, setOnly] = useState<Shown>('all');
  const pages = usePreview({ whose, importId, mapping, only: only === 'all' ? undefined : only });
  const apply = useApply(whose);
  const { first: preview, problem } = pages;
  if (!preview) return problem ? <Refusal problem={problem} /> : <Skeleton lines={6} />;
  const why = whyNot(preview);
  const take = () =>
    apply.mutate(
      { input: { importId, mapping: preview.mapping } },
      {
        onSuccess: ({ counts }) => {
          say(`${tableTitles[preview.kind]}: ${counts.new} new, ${counts.changed} changed, ${counts.same} the same.`);
          onApplied();
        },
      },
    );
  return (
    <div className="stack">
      <details open={preview.missing.length > 0 || Object.values(preview.how).includes('near')}>
        <summary>Which column is read as what</summary>
        <MappingFields preview={preview} onChange={setMapping} />
      </details>
      <Counts counts={preview.counts} />
      {apply.error ? <Refusal problem={apply.error} /> : null}
      <div className="row">
        <Button weight="next" isDisabled={why !== undefined} isPending={apply.isPending} onPress={take}>
          Take the table over
        </Button>
        <Button weight="quiet" onPress={onClose}>
          Put it aside
        </Button>
        {why ? <span>{why}</span> : null}
      </div>
      <PagesFrame of={pages}>
        <PreviewTable
          preview={preview}
          rows={pages.rows}
          tools={<InlineSelect label="Show" value={only} onChange={setOnly} choices={shownChoices} isRequired />}
        />
      </PagesFrame>
    </div>
  );
}
