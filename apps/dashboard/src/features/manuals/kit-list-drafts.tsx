import { kitListOperations } from '@hubwright/contracts/manuals/kit-list-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useMay } from '../../api/me.ts';
import { type RowOf, usePages } from '../../api/pages.ts';
import { countOf } from '../../format/numbers.ts';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { currentOf, type Manual } from './manuals.ts';

type Draft = RowOf<typeof kitListOperations.listKitListDrafts>;
type Line = Draft['lines'][number];

const textOf = ({ part, position, scopes, per, quantity, minimum, source, serialFrom, serialTo }: Line) =>
  [
    `${minimum === undefined ? '' : `${minimum} to `}${quantity} × ${part}`,
    `${position} (${source}, per ${per})`,
    scopes.join(', '),
    ...(serialFrom || serialTo ? [`serials ${serialFrom ?? 'first'} to ${serialTo ?? 'last'}`] : []),
  ].join(', ');

/** What comes and what goes against the revision that holds. */
function Differences({ draft }: { draft: Draft }) {
  const before = new Set(draft.current?.lines.map(textOf) ?? []);
  const after = new Set(draft.lines.map(textOf));
  const come = [...after].filter((line) => !before.has(line));
  const go = [...before].filter((line) => !after.has(line));
  return (
    <div className="stack tight">
      <strong>{draft.model.designation}</strong>
      <span className="soft small">
        {countOf(draft.lines.length, 'line')}, brought by {draft.preparedBy.displayName},{' '}
        <InstantText instant={draft.preparedAt} />
      </span>
      <ul>
        {go.map((line) => (
          <li key={`-${line}`}>no longer: {line}</li>
        ))}
        {come.map((line) => (
          <li key={`+${line}`}>new: {line}</li>
        ))}
      </ul>
    </div>
  );
}

function IssueKitLists(props: { manual: Manual; drafts: readonly Draft[]; onClose: () => void }) {
  const { manual, drafts, onClose } = props;
  const issue = useCommand(kitListOperations.issueKitLists);
  const [draft, setDraft] = useState({ revision: '', issuedOn: '' });
  const put = (key: keyof typeof draft) => (text: string) => setDraft({ ...draft, [key]: text });
  const current = currentOf(manual)?.revision;
  const send = () =>
    issue.mutate(
      { input: { manualId: manual.id, ...draft, drafts: drafts.map(({ id, version }) => ({ id, version })) } },
      {
        onSuccess: () => {
          say(`Revision ${draft.revision} of ${manual.number} is current. An inspector checks its currency.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Issue kit lists of ${manual.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={issue.error}
        isPending={issue.isPending}
        submit="Make it current"
        onSubmit={send}
        onCancel={onClose}
      >
        <p>
          {current
            ? `Routes, limits and rules stay as revision ${current} says; work that goes by ${current} stands still until an inspector has compared both.`
            : 'The manual has no revision yet: the first one has these kit lists and no routes.'}
        </p>
        {drafts.map((each) => (
          <Differences key={each.id} draft={each} />
        ))}
        <div className="field-grid">
          <TextField name="revision" label="Revision" value={draft.revision} onChange={put('revision')} isRequired />
          <DateField name="issuedOn" label="Issued on" value={draft.issuedOn} onChange={put('issuedOn')} isRequired />
        </div>
      </CommandForm>
    </Dialog>
  );
}

/** Kit lists of a manual that a table brought and nobody has issued; nothing where none waits. */
export function KitListDrafts({ manual }: { manual: Manual }) {
  const drafts = usePages(kitListOperations.listKitListDrafts, {}).rows.filter(
    (draft) => draft.manual.id === manual.id,
  );
  const mayIssue = useMay(kitListOperations.issueKitLists);
  const drop = useCommand(kitListOperations.dropKitListDraft);
  const [isIssuing, setIssuing] = useState(false);
  if (drafts.length === 0) return null;
  return (
    <div className="stack">
      <div className="row between">
        <h3>Kit lists that wait</h3>
        {mayIssue ? (
          <Button weight="next" onPress={() => setIssuing(true)}>
            Issue with the next revision
          </Button>
        ) : null}
      </div>
      <ul className="lines">
        {drafts.map((draft) => (
          <li key={draft.id}>
            <Differences draft={draft} />
            <Button
              weight="quiet"
              isPending={drop.isPending}
              onPress={() => drop.mutate({ input: { draftId: draft.id }, version: draft.version })}
            >
              Put aside
            </Button>
          </li>
        ))}
      </ul>
      {isIssuing ? <IssueKitLists manual={manual} drafts={drafts} onClose={() => setIssuing(false)} /> : null}
    </div>
  );
}
