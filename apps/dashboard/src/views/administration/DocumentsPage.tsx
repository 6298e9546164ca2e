import { documentOperations } from '@hubwright/contracts/manuals/document-operations';
import { documentKind } from '@hubwright/contracts/manuals/words';
import { useState } from 'react';
import { z } from 'zod';
import { useMay, useMe } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { AddDocument } from '../../features/manuals/add-document.tsx';
import { DocumentSheet } from '../../features/manuals/DocumentSheet.tsx';
import { DocumentTable } from '../../features/manuals/DocumentTable.tsx';
import { kindChoices } from '../../features/manuals/documents.ts';
import { useAddress } from '../../shell/use-address.ts';
import { Button } from '../../ui/Button.tsx';
import { FilterField } from '../../ui/FilterField.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { Select } from '../../ui/Select.tsx';
import styles from './administration.module.css';

const address = z.object({
  document: z.string().catch(''),
  search: z.string().catch(''),
  kind: z.union([documentKind, z.literal('all')]).catch('all'),
  withdrawn: z.enum(['yes', 'no']).catch('no'),
});
const kinds = [{ value: 'all' as const, text: 'Every kind' }, ...kindChoices];
const standing = [
  { value: 'no' as const, text: 'In force' },
  { value: 'yes' as const, text: 'Withdrawn' },
];

/** Left the documents, right the one opened with its issues. */
export function DocumentsPage() {
  const me = useMe();
  const [{ document, search, kind, withdrawn }, setAddress] = useAddress(address);
  const documents = usePages(documentOperations.listDocuments, {
    withdrawn,
    ...(search === '' ? {} : { search }),
    ...(kind === 'all' ? {} : { kind }),
  });
  const mayAdd = useMay(documentOperations.addDocument);
  const [isAdding, setAdding] = useState(false);
  const opened = documents.rows.find((row) => row.id === document);
  const query = new URLSearchParams({ search, kind, withdrawn });
  return (
    <div className={opened ? styles.beside : ''}>
      <div className="sheet">
        <PagesFrame of={documents}>
          <DocumentTable
            documents={documents.rows}
            isNarrow={opened !== undefined}
            hrefOf={(row) => `/documents?${query}&document=${row.id}`}
            tools={
              <>
                <FilterField
                  label="Number, title or issuer"
                  value={search}
                  onChange={(text) => setAddress({ search: text })}
                />
                <Select
                  label="Kind"
                  value={kind}
                  onChange={(value) => setAddress({ kind: value })}
                  choices={kinds}
                  isRequired
                />
                <Select
                  label="Standing"
                  value={withdrawn}
                  onChange={(value) => setAddress({ withdrawn: value })}
                  choices={standing}
                  isRequired
                />
                {mayAdd ? <Button onPress={() => setAdding(true)}>Add a document</Button> : null}
              </>
            }
          />
        </PagesFrame>
      </div>
      {opened ? <DocumentSheet key={opened.id} document={opened} signer={me} /> : null}
      {isAdding ? (
        <AddDocument
          onClose={() => setAdding(false)}
          onAdded={(added) => {
            setAdding(false);
            setAddress({ document: added });
          }}
        />
      ) : null}
    </div>
  );
}
