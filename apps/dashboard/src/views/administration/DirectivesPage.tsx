import { directiveOperations } from '@hubwright/contracts/directives/operations';
import { useState } from 'react';
import { z } from 'zod';
import { useMay, useMe } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { DirectiveSheet } from '../../features/directives/DirectiveSheet.tsx';
import { DirectiveTable } from '../../features/directives/DirectiveTable.tsx';
import { IssueDirective } from '../../features/directives/issue-directive.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { Button } from '../../ui/Button.tsx';
import { FilterField } from '../../ui/FilterField.tsx';
import { InlineSelect } from '../../ui/InlineSelect.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import styles from './administration.module.css';

const address = z.object({
  directive: z.string().catch(''),
  search: z.string().catch(''),
  withdrawn: z.enum(['yes', 'no']).catch('no'),
});
const standing = [
  { value: 'no' as const, text: 'On record' },
  { value: 'yes' as const, text: 'Withdrawn' },
];

/** Left the directives, right the one opened. */
export function DirectivesPage() {
  const me = useMe();
  const [{ directive, search, withdrawn }, setAddress] = useAddress(address);
  const directives = usePages(directiveOperations.listDirectives, {
    withdrawn,
    ...(search === '' ? {} : { search }),
  });
  const mayIssue = useMay(directiveOperations.issueDirective);
  const [isIssuing, setIssuing] = useState(false);
  const opened = directives.rows.find((row) => row.id === directive);
  const query = new URLSearchParams({ search, withdrawn });
  return (
    <div className={opened ? styles.beside : ''}>
      <div className="sheet">
        <PagesFrame of={directives}>
          <DirectiveTable
            directives={directives.rows}
            isNarrow={opened !== undefined}
            hrefOf={(row) => `/directives?${query}&directive=${row.id}`}
            tools={
              <>
                <FilterField
                  label="Number, title or issuer"
                  value={search}
                  onChange={(text) => setAddress({ search: text })}
                />
                <InlineSelect
                  label="Standing"
                  value={withdrawn}
                  onChange={(value) => setAddress({ withdrawn: value })}
                  choices={standing}
                  isRequired
                />
                {mayIssue ? <Button onPress={() => setIssuing(true)}>Put a directive on record</Button> : null}
              </>
            }
          />
        </PagesFrame>
      </div>
      {opened ? <DirectiveSheet key={opened.id} directive={opened} signer={me} /> : null}
      {isIssuing ? (
        <IssueDirective
          signer={me}
          onClose={() => setIssuing(false)}
          onIssued={(issued) => {
            setIssuing(false);
            setAddress({ directive: issued });
          }}
        />
      ) : null}
    </div>
  );
}
