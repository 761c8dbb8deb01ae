import { configDefaults, defineConfig } from 'vitest/config'

/** Tests of what was built: the page in a browser, and the files that the build gives. */
const OF_THE_BUILD = ['tests/window/**/*.test.ts', 'tests/**/built.test.ts']

export default defineConfig({
  test: {
    // The coverage and kill tests do real work for tens of seconds on two cores.
    testTimeout: 120_000,
    hookTimeout: 60_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'sources',
          include: ['tests/**/*.test.ts'],
          exclude: [...configDefaults.exclude, ...OF_THE_BUILD],
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'built',
          include: OF_THE_BUILD,
          globalSetup: ['tests/setup/built.ts'],
          // Each drives a browser of its own: one at a time, after all others, or they wait for each other.
          fileParallelism: false,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
})
