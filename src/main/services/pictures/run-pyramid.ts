import { type ChildProcess, fork } from 'node:child_process'
import type { TilesWanted } from './cut-tiles.ts'
import type { FromPyramid, ToPyramid } from './pyramid-messages.ts'

/** Tiles that are being cut by a process of their own. */
export interface RunningPyramid {
  /**
   * `done` when all are cut, `stopped` after `stop`.
   * @throws Error whose message says why they could not be cut, as the end of a sentence
   */
  ended: Promise<'done' | 'stopped'>
  /** Ends the process; `ended` resolves when it has ended. */
  stop(): void
}

export function runPyramid(
  program: string,
  wanted: TilesWanted,
  progressed: (tiles: number) => void,
): RunningPyramid {
  const child: ChildProcess = fork(program, [], {
    stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
    execArgv: [],
  })
  let stopped = false
  const ended = new Promise<'done' | 'stopped'>((resolve, reject) => {
    let outcome: 'done' | Error | undefined
    child.on('message', (message: FromPyramid) => {
      if (message.kind === 'tiles') progressed(message.tiles)
      else outcome = message.kind === 'done' ? 'done' : new Error(message.because)
    })
    child.once('error', () => {
      outcome ??= new Error('the process that cuts tiles could not be started')
      if (child.pid === undefined) reject(outcome)
    })
    child.once('close', (code, signal) => {
      if (stopped) resolve('stopped')
      else if (outcome === 'done') resolve('done')
      else reject(outcome ?? new Error(`the process that cuts tiles ended early (${signal ?? code})`))
    })
  })
  const order: ToPyramid = wanted
  // A process that ends before it reads this is told of by 'close'.
  child.send(order, () => undefined)
  return {
    ended,
    stop: () => {
      stopped = true
      child.kill('SIGKILL')
    },
  }
}
