import { canonicalJson } from '@hubwright/rules/chain';

/**
 * Tables of signatures, and whether their content is kept as the text that was hashed. JSON of the database has no order of its own, so
 * there the canonical text is made again; what cannot be read is left as it is and fits no hash.
 */
export const signatureTables = { sign_offs: 'text', field_signatures: 'json', stock_signatures: 'json' } as const;
type SignatureTable = keyof typeof signatureTables;

export const signatureTableNames = Object.keys(signatureTables) as SignatureTable[];

export function signedText(table: SignatureTable, content: string): string {
  if (signatureTables[table] === 'text') return content;
  try {
    return canonicalJson(JSON.parse(content));
  } catch {
    return content;
  }
}
