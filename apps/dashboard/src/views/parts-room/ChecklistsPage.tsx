import { partClassesInStock } from '@hubwright/contracts/inventory/part-operations';
import { receivingOperations } from '@hubwright/contracts/inventory/receiving-operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { ChecklistList } from '../../features/inventory/ChecklistList.tsx';
import type { Checklist } from '../../features/inventory/checklists.ts';
import { IssueChecklist } from '../../features/inventory/issue-checklist.tsx';
import { classWords } from '../../features/inventory/stock-words.ts';
import { Button } from '../../ui/Button.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';

interface Asked {
  readonly partClass: Checklist['partClass'];
  readonly checklist: Checklist | undefined;
}

/** Whoever answers for inspection says what is looked at; whoever receives reads it here. */
export function ChecklistsPage() {
  const pages = usePages(receivingOperations.listChecklists, {});
  const mayIssue = useMay(receivingOperations.issueChecklist);
  const [asked, setAsked] = useState<Asked>();
  return (
    <PagesFrame of={pages}>
      <div className="stack">
        <ChecklistList
          classes={partClassesInStock}
          rows={pages.rows}
          actions={(partClass, checklist) => {
            const text = checklist ? 'Write the next revision' : 'Write a checklist';
            return mayIssue ? (
              <Button
                onPress={() => setAsked({ partClass, checklist })}
                aria-label={`${text}: ${classWords[partClass]}`}
              >
                {text}
              </Button>
            ) : null;
          }}
        />
      </div>
      {asked ? <IssueChecklist {...asked} onClose={() => setAsked(undefined)} /> : null}
    </PagesFrame>
  );
}
