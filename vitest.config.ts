import { availableParallelism } from 'node:os'
import { configDefaults, defineConfig } from 'vitest/config'
import { asOneModule } from './tests/setup/as-one-module.ts'
import { DearestFirst } from './tests/setup/dearest-first.ts'
import { folderAsOneModule } from './tests/setup/folder-as-one-module.ts'

/** Tests of what was built: the page in a browser, and the files that the build gives. */
const OF_THE_BUILD = ['tests/window/**/*.test.ts', 'tests/**/built.test.ts']

/** Tests that put something of their own in place of a module. */
const APART = [
  'tests/main/electron/*.test.ts',
  'tests/main/job-folder/lock-to-disk.test.ts',
  'tests/main/job-folder/save-refused.test.ts',
]

/** Tests that run the command line; its parts are tried among the sources. */
const COMMAND_LINE = ['tests/main/cli/*.test.ts']

/** What computes for many seconds. */
const HARD_WORKING = [
  'tests/core/calibration/coverage/hold-the-truth.ts',
  'tests/core/imaging/alike.test.ts',
  'tests/core/imaging/judge/trials.ts',
  'tests/core/imaging/no-stroke.test.ts',
  'tests/published/strokes-against-opencv.test.ts',
]

/**
 * One more than there are cores: many tests wait for processes that they began, or for the disk, and another can go on
 * meanwhile. Left to itself Vitest keeps a core free, which is every second one of two.
 */
const WORKERS = availableParallelism() + 1

/** Made once for all that take it. */
const core = folderAsOneModule('src/core')

export default defineConfig({
  test: {
    // The coverage and kill tests do real work for tens of seconds on two cores.
    testTimeout: 120_000,
    hookTimeout: 60_000,
    sequence: { sequencer: DearestFirst },
    // Much is made and dropped at once: with room for it, a tenth less of the time goes into clearing it away.
    execArgv: ['--max-semi-space-size=64'],
    setupFiles: ['tests/setup/at-the-end.ts'],
    projects: [
      {
        extends: true,
        plugins: [asOneModule(...HARD_WORKING), core],
        test: {
          name: 'sources',
          include: ['tests/**/*.test.ts'],
          exclude: [...configDefaults.exclude, ...OF_THE_BUILD, ...APART, ...COMMAND_LINE],
          // Scans are read and pictures made by processes of their own, which begin much faster when they are built.
          globalSetup: ['tests/setup/built.ts'],
          // To begin a process for each takes longer than most of them do. They share modules, and leave nothing in them.
          isolate: false,
          maxWorkers: WORKERS,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        plugins: [core],
        test: {
          name: 'apart',
          include: APART,
          exclude: [...configDefaults.exclude, ...OF_THE_BUILD],
          maxWorkers: WORKERS,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'command line',
          include: COMMAND_LINE,
          globalSetup: ['tests/setup/command-line.ts'],
          // What is bundled is run as it is.
          server: { deps: { external: [/\/out\/tests\//] } },
          isolate: false,
          maxWorkers: WORKERS,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        plugins: [core],
        test: {
          name: 'built',
          include: OF_THE_BUILD,
          globalSetup: ['tests/setup/built.ts', 'tests/setup/kept-pictures.ts'],
          isolate: false,
          // Each drives a browser of its own: three at a time, after all others, for they wait for what is painted.
          maxWorkers: 3,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
})
