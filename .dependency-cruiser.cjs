// Who may import whom. `npm run check` fails on any of these.
const test = '\\.test\\.tsx?$';

/** One sentence per rule: what must not be imported from where. */
const forbid = (name, comment, [from, to]) => ({ name, comment, severity: 'error', from, to });

module.exports = {
  forbidden: [
    forbid('no-circles', 'Modules that import each other in a circle fail when they load. Types alone may.', [
      {},
      { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    ]),
    forbid('nothing-unresolved', 'An import must lead somewhere.', [{}, { couldNotResolve: true }]),
    forbid('only-listed-packages', 'What ships names its packages in its own package.json.', [
      { path: '^(apps|packages)/[^/]+/src/', pathNot: test },
      { dependencyTypes: ['npm-no-pkg', 'npm-unknown'] },
    ]),
    forbid(
      'rules-are-pure',
      'The computation uses itself and the few libraries its package.json names: no Node, no database, no clock.',
      [{ path: '^packages/rules/', pathNot: test }, { pathNot: ['^packages/rules/', '^node_modules/'] }],
    ),
    forbid('contracts-know-zod-and-value-types', 'Contracts are read by both sides.', [
      { path: '^packages/contracts/', pathNot: test },
      { pathNot: ['^packages/(contracts|rules)/', '^node_modules/zod/'] },
    ]),
    forbid(
      'dashboard-knows-only-contracts-and-rules',
      'What runs in the browser must not reach the server, the database or Node.',
      [
        { path: '^apps/dashboard/src/' },
        { path: ['^apps/server/', '^prisma/', '^node_modules/(@prisma|prisma|pg|@nestjs)/'] },
      ],
    ),
    forbid('dashboard-uses-no-node', 'There is no Node in the browser.', [
      { path: '^apps/dashboard/src/', pathNot: test },
      { dependencyTypes: ['core'] },
    ]),
    forbid('departments-meet-at-public', 'A module uses another only through its public.ts.', [
      { path: '^apps/server/src/modules/([^/]+)/', pathNot: test },
      { path: '^apps/server/src/modules/', pathNot: ['^apps/server/src/modules/$1/', '/public\\.ts$'] },
    ]),
    forbid('platform-knows-no-noun', 'The platform serves every department and knows none.', [
      { path: '^apps/server/src/platform/', pathNot: test },
      { path: '^apps/server/src/(modules|app|main)' },
    ]),
    forbid('controllers-do-not-touch-data', 'A controller hands over to a command or a query.', [
      { path: '^apps/server/src/modules/.*\\.controller\\.ts$' },
      { path: '^apps/server/src/platform/database/' },
    ]),
    forbid(
      'only-commands-write',
      'The database client itself stays in the platform; departments get a transaction, whose type is all they may import.',
      [
        { path: '^apps/server/src/modules/', pathNot: test },
        {
          path: '^apps/server/src/platform/database/(client\\.ts|generated/)',
          dependencyTypesNot: ['type-only'],
        },
      ],
    ),
    forbid('queries-do-not-write', 'Queries read through Reads.', [
      { path: '^apps/server/src/modules/.*\\.queries\\.ts$' },
      { path: ['^apps/server/src/platform/database/client\\.ts$', '\\.command\\.ts$'] },
    ]),
    forbid('features-do-not-meet', 'Views put features together.', [
      { path: '^apps/dashboard/src/features/([^/]+)/' },
      { path: '^apps/dashboard/src/(features|views|routes)/', pathNot: '^apps/dashboard/src/features/$1/' },
    ]),
    forbid('look-knows-no-feature', 'Components, formats and the client serve every feature and know none.', [
      { path: '^apps/dashboard/src/(ui|format|api|scan)/' },
      { path: '^apps/dashboard/src/(features|views|routes|shell)/' },
    ]),
    forbid('nothing-imports-tests', 'What ships does not need its tests.', [
      { path: '^(apps|packages|prisma|seed)/', pathNot: test },
      { path: ['^tests/', test] },
    ]),
    forbid('nothing-imports-the-seed', 'Only the program that fills an empty database knows the invented shop.', [
      { path: '^(apps|packages|prisma)/', pathNot: [test, '^apps/server/src/main\\.ts$'] },
      { path: '^seed/' },
    ]),
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: ['/dist/', '/database/generated/internal/', '/database/generated/models/'] },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'types', 'node', 'default'],
      extensions: ['.ts', '.tsx', '.mjs', '.js', '.json'],
    },
  },
};
