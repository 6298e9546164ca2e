import { mediaOperations } from '@hubwright/contracts/peening/media-operations';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { RadioList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type CheckDraft, noDraft, verdict } from './media-verdict.ts';
import type { Media } from './peening.ts';

const sides = ({ low, high }: Media['limits']['sieves'][number]) =>
  [low && `${low} % at least`, high && `${high} % at most`].filter(Boolean).join(', ');

/** A check of media: every sieve, the count under the glass and the look for contamination, the verdict as it comes. */
export function CheckMedia({ media, signer, onClose }: { media: Media; signer: Signer; onClose: () => void }) {
  const [draft, setDraft] = useState(noDraft);
  const [isSigning, setSigning] = useState(false);
  const [problem, setProblem] = useState<ProblemError | null>(null);
  const { limits, everyHours } = media;
  const judged = verdict(media, draft);
  const put = (changes: Partial<CheckDraft>) => setDraft({ ...draft, ...changes });
  if (isSigning)
    return (
      <SignCommand
        op={mediaOperations.checkPeeningMedia}
        input={{
          mediaId: media.id,
          sieves: limits.sieves.map(({ name }) => ({ name, percent: draft.percents[name] ?? '' })),
          ...{ broken: Number(draft.broken), clean: draft.clean === 'clean', note: draft.note },
          ...(draft.meterHours ? { meterHours: draft.meterHours } : {}),
        }}
        version={media.version}
        signer={signer}
        onClose={() => setSigning(false)}
        onWrongInput={(wrong) => {
          setProblem(wrong);
          setSigning(false);
        }}
        onSigned={({ passed, doubtful }) => {
          const lots = [...new Set(doubtful.map(({ lot }) => lot))];
          if (passed) say(`${media.code} is good.`);
          else if (lots.length === 0) say(`${media.code} failed its check.`);
          else say(`${media.code} failed its check: ${lots.join(', ')} wait for a decision.`);
          onClose();
        }}
      >
        <p>{limits.sieves.map(({ name }) => `${name} ${draft.percents[name]} %`).join(', ')}</p>
        <p>
          {draft.broken} broken or deformed in {limits.field}, {draft.clean}. {judged?.reasons.join(' ')}
        </p>
      </SignCommand>
    );
  return (
    <Dialog title={`Check ${media.code}`} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={problem}
        isPending={false}
        submit="Go on to sign"
        onCancel={onClose}
        onSubmit={() => judged && setSigning(true)}
      >
        <div className="field-grid">
          {limits.sieves.map((sieve, index) => (
            <DecimalField
              key={sieve.name}
              name={`sieves/${index}/percent`}
              label={sieve.name}
              hint={sides(sieve)}
              unit="%"
              decimals={2}
              value={draft.percents[sieve.name] ?? ''}
              onChange={(text) => put({ percents: { ...draft.percents, [sieve.name]: text } })}
              isRequired
            />
          ))}
          <DecimalField
            name="broken"
            label="Broken or deformed"
            hint={`${limits.mostBroken} at most in ${limits.field}`}
            decimals={0}
            value={draft.broken}
            onChange={(broken) => put({ broken })}
            isRequired
          />
          {everyHours ? (
            <DecimalField
              name="meterHours"
              label="Machine’s counter"
              unit="h"
              decimals={1}
              value={draft.meterHours}
              onChange={(meterHours) => put({ meterHours })}
              isRequired
            />
          ) : null}
        </div>
        <RadioList
          name="clean"
          label="Looked for dust, oil and foreign metal"
          value={draft.clean}
          onChange={(clean) => put({ clean })}
          choices={[
            { value: 'clean', text: 'Clean' },
            { value: 'contaminated', text: 'Contaminated' },
          ]}
          isRequired
        />
        <TextField name="note" label="Note" value={draft.note} onChange={(note) => put({ note })} />
        <div role="status">
          {judged?.passed ? <StateMark state="passed" word="good" /> : null}
          {judged && !judged.passed ? (
            <p>
              <StateMark state="stop" word="fails" /> {judged.reasons.join(' ')} Lots since the last good check wait for
              an inspector’s decision, and hold the release of their units.
            </p>
          ) : null}
        </div>
      </CommandForm>
    </Dialog>
  );
}
