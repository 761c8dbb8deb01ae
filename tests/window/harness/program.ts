import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { resolve } from 'node:path'
import { createInterface } from 'node:readline'
import { runProgram } from '../../main/fixtures/run-program.ts'

/** The command, as a person starts it. */
export const SCANTLING = resolve(import.meta.dirname, '../../../bin/scantling.js')

/** What is opened: a job folder, the practice copy of the sample, or the start page. */
export type Opens = { folder: string } | 'sample' | 'start'

/** A workbench that runs: `scantling open --print`. */
export interface Program {
  pid: number
  /** Lets one browser in, once. */
  address: string
  /** What it wrote beside the address: one line for each request that was refused or failed. */
  log: string[]
  /** Asks it to end, and waits for that. @returns its exit code */
  end(): Promise<number | null>
  /** Ends it as a power cut would. */
  kill(): Promise<void>
}

const argumentsOf = (opens: Opens): string[] =>
  opens === 'start' ? [] : opens === 'sample' ? ['--sample'] : [opens.folder]

/**
 * Starts the workbench on its own, with settings and new jobs below `home`.
 * @param command the program, where it is another build
 * @throws Error with what it said, when it ends before it gives its address
 */
export async function startProgram(opens: Opens, home: string, command = SCANTLING): Promise<Program> {
  const child = spawn(process.execPath, [command, 'open', ...argumentsOf(opens), '--print'], {
    // The home folder too, so that places are shown below it, and nothing of whoever runs this is touched.
    env: { ...process.env, HOME: home, SCANTLING_HOME: home },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const ended = once(child, 'exit')
  const log: string[] = []
  createInterface({ input: child.stderr }).on('line', (line) => log.push(line))
  const address = await addressFrom(child, log)
  return {
    pid: child.pid ?? 0,
    address,
    log,
    end: async () => {
      // Its last window is gone by now, or will never be: it need not linger for another.
      child.kill('SIGTERM')
      await ended
      return child.exitCode
    },
    kill: async () => {
      child.kill('SIGKILL')
      await ended
    },
  }
}

function addressFrom(child: ChildProcess, log: readonly string[]): Promise<string> {
  return new Promise((found, failed) => {
    if (child.stdout !== null) {
      createInterface({ input: child.stdout }).on('line', (line) => {
        if (line.startsWith('http://127.0.0.1:')) found(line)
      })
    }
    child.once('exit', (code) => failed(new Error(`scantling open ended with ${code}: ${log.join('\n')}`)))
  })
}

/** The table of a job folder as the command line gives it, in JSON unless said otherwise. */
export async function tableByCommand(folder: string, ...more: readonly string[]): Promise<string> {
  const given = more.length === 0 ? ['--format', 'json'] : more
  const { code, stdout, stderr } = await runProgram(SCANTLING, ['table', folder, ...given])
  if (code !== 0) throw new Error(`scantling table ended with ${code}: ${stderr}`)
  return stdout
}
