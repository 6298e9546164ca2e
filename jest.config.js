// One config, projects by size: `rules` needs nothing, `server` needs PostgreSQL, `browser` needs a built dashboard too.
const base = {
  transform: { '^.+\\.tsx?$': ['@swc/jest'] },
  extensionsToTreatAsEsm: ['.ts', '.tsx'],
  testEnvironment: 'node',
  moduleFileExtensions: ['ts', 'tsx', 'js', 'mjs', 'json'],
};

export default {
  projects: [
    {
      ...base,
      displayName: 'rules',
      testMatch: ['<rootDir>/packages/**/*.test.ts', '<rootDir>/tests/published/**/*.test.ts'],
    },
  ],
};
