import type { TestProject } from 'vitest/node'
import { bundlePrograms } from '../main/fixtures/bundle-program.ts'

declare module 'vitest' {
  interface ProvidedContext {
    /** The folder of the bundled command line: `cli.js`, which runs it, `main.js`, which gives it as a function. */
    commandLine: string
  }
}

/** Bundles the command line with the programs that it starts, once for all tests of it. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const { folder, remove } = await bundlePrograms({
    cli: 'src/main/cli/index.ts',
    main: 'src/main/cli/main.ts',
    reader: 'src/main/services/scans/reader/reader-process.ts',
    figures: 'src/main/services/reading/process/figure-process.ts',
    pyramid: 'src/main/services/pictures/process/pyramid-process.ts',
  })
  project.provide('commandLine', folder)
  return remove
}
