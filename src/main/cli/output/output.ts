import { oneSentence } from './one-sentence.ts'

export const COLUMNS_WITHOUT_TERMINAL = 120

/** Text for standard output, as it is. */
export function print(text: string): void {
  process.stdout.write(text)
}

/** Something that a person should know but that stops nothing; on standard error. */
export function note(message: string): void {
  process.stderr.write(`Note: ${oneSentence(message)}\n`)
}

/** What stops a command: one sentence on standard error, exit code 2. */
export function fail(message: string): void {
  process.stderr.write(`${oneSentence(message)}\n`)
  process.exitCode = 2
}

/** Columns of the terminal; where output goes elsewhere, what COLUMNS says, else a usual page. */
export function outputWidth(): number {
  const stated = process.env['COLUMNS'] ?? ''
  return process.stdout.columns ?? (/^[1-9]\d{0,4}$/.test(stated) ? Number(stated) : COLUMNS_WITHOUT_TERMINAL)
}

/** A reader that went away (`scantling table … | head`) is no error. */
export function ignoreClosedPipes(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error
    })
  }
}
