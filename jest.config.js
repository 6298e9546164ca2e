// One config, projects by size: `rules` needs nothing, `server` needs PostgreSQL, `browser` needs a built dashboard too.
const base = {
  transform: { '^.+\\.tsx?$': ['@swc/jest'] },
  extensionsToTreatAsEsm: ['.ts', '.tsx'],
  testEnvironment: 'node',
  moduleFileExtensions: ['ts', 'tsx', 'js', 'mjs', 'json'],
};

const withDatabase = {
  ...base,
  globalSetup: '<rootDir>/tests/support/global-setup.mjs',
  globalTeardown: '<rootDir>/tests/support/global-teardown.mjs',
};

export default {
  testTimeout: 30_000,
  projects: [
    {
      ...base,
      displayName: 'rules',
      testMatch: [
        '<rootDir>/packages/**/*.test.ts',
        '<rootDir>/tests/published/**/*.test.ts',
        '<rootDir>/apps/dashboard/src/**/*.test.ts',
      ],
    },
    {
      ...withDatabase,
      displayName: 'server',
      testMatch: [
        '<rootDir>/apps/server/**/*.test.ts',
        '<rootDir>/tests/{flows,ledger,security,faults,house}/**/*.test.ts',
      ],
    },
    {
      ...withDatabase,
      displayName: 'browser',
      testMatch: ['<rootDir>/tests/browser/**/*.test.ts'],
    },
  ],
};
