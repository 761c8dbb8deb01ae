import { main } from './main.ts'

// A reader that went away (`scantling table … | head`) is no error.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error
  })
}
process.exitCode = await main(process.argv.slice(2), process)
