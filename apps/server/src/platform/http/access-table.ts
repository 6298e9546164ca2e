import type { Operation } from '@hubwright/contracts/operation';
import { roles } from '@hubwright/contracts/roles';

/** Who may call what, as a table a person can review: one row per endpoint, one column per role, and what hangs on whose it is. */
export function accessTable(operations: readonly Operation[]): string {
  const head = `| endpoint | what | ${['anyone', ...roles].join(' | ')} | own or another’s |`;
  const rule = `|${'---|'.repeat(roles.length + 4)}`;
  const rows = [...operations]
    .sort((a, b) => (`${a.path} ${a.method}` < `${b.path} ${b.method}` ? -1 : 1))
    .map(
      (operation) =>
        `| ${operation.method} ${operation.path} | ${operation.summary} | ${['anyone', ...roles].map((role) => mark(operation, role)).join(' | ')} | ${whose(operation)} |`,
    );
  return [
    '# Who may call what',
    '',
    'Generated from the contracts by `npm run describe`; a test compares it with the running server.',
    '',
    head,
    rule,
    ...rows,
    '',
  ].join('\n');
}

function mark({ access }: Operation, role: string): string {
  if (access === 'public') return 'yes';
  if (role === 'anyone') return '–';
  return access === 'signed-in' || (access as readonly string[]).includes(role) ? 'yes' : '–';
}

/** What a role does not settle: whose session, whose signature, whose work. */
function whose({ path, signs, problems }: Operation): string {
  const says = [
    ...(/^\/api\/session(\/|$)/.test(path) ? ['own session only'] : []),
    ...(signs === undefined ? [] : ['own signature only']),
    ...(problems.some((type) => type === 'own-inspection') ? ['not what one did oneself'] : []),
  ];
  return says.join('; ');
}
