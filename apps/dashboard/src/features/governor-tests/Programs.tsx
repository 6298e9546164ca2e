import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { useQueries, useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { queryFor } from '../../api/query.ts';
import { Button } from '../../ui/Button.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { type Program, programsQuery } from './governor.ts';
import { IssueProgram, type ModelChoice } from './issue-program.tsx';
import { ProgramSheet } from './ProgramSheet.tsx';
import { ProgramTable } from './ProgramTable.tsx';
import { draftOf, type ProgramDraft } from './program-draft.ts';

/** Governor models with a current revision and what they are approved for. */
function useGovernorModels(): readonly ModelChoice[] {
  const models = useQuery(queryFor(manualOperations.listModels, { limit: 200 })).data?.rows ?? [];
  const governors = models.filter(({ kind, currentRevision }) => kind === 'governor' && currentRevision !== null);
  const details = useQueries({
    queries: governors.map(({ id }) => queryFor(manualOperations.showModel, { modelId: id })),
  });
  return details.flatMap(({ data }) =>
    data?.currentRevision
      ? [
          {
            ...{ designation: data.designation, revision: data.currentRevision },
            applications: data.applications.map(({ id, airframe, engine, position }) => ({
              value: id,
              text: `${airframe}, ${engine}, ${position}`,
            })),
          },
        ]
      : [],
  );
}

/** Programs by model and application, and the way to issue one. */
export function Programs({ signer }: { signer: Signer }) {
  const [isAll, setAll] = useState(false);
  const rows = useSuspenseQuery(programsQuery(isAll ? 'all' : 'current')).data.rows;
  const models = useGovernorModels();
  const mayIssue = useMay(governorOperations.issueGovernorProgram);
  const [opened, setOpened] = useState<Program>();
  const [issuing, setIssuing] = useState<{ model: ModelChoice; from?: ProgramDraft }>();
  const modelOf = (program: Program) =>
    models.find(({ applications }) => applications.some(({ value }) => value === program.application.id));
  const model = opened && modelOf(opened);
  return (
    <div className="stack">
      <div className="row">
        {mayIssue
          ? models.map((each) => (
              <Button key={each.designation} onPress={() => setIssuing({ model: each })}>
                Issue a program of {each.designation}
              </Button>
            ))
          : null}
        <Button weight="quiet" onPress={() => setAll(!isAll)}>
          {isAll ? 'Only what is current' : 'Every issue there was'}
        </Button>
      </div>
      <ProgramTable rows={rows} onOpen={setOpened} />
      {opened && !issuing ? (
        <ProgramSheet
          program={opened}
          onClose={() => setOpened(undefined)}
          {...(mayIssue && model ? { onIssue: () => setIssuing({ model, from: draftOf(opened) }) } : {})}
        />
      ) : null}
      {issuing ? (
        <IssueProgram
          model={issuing.model}
          from={issuing.from}
          signer={signer}
          onClose={() => {
            setIssuing(undefined);
            setOpened(undefined);
          }}
        />
      ) : null}
    </div>
  );
}
