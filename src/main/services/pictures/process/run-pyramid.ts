import { type ChildProcess, fork } from 'node:child_process'
import { makePictures } from './make-pictures.ts'
import type { FromPyramid, ToPyramid } from './pyramid-messages.ts'

/** Pictures that are being made by a process of their own. */
export interface RunningPyramid {
  /**
   * `done` when all are made, `stopped` after `stop`.
   * @throws Error whose message says why they could not be made, as the end of a sentence
   */
  ended: Promise<'done' | 'stopped'>
  /** Ends the process; `ended` resolves when it has ended. */
  stop(): void
}

/** Hears what the process tells. */
export type Told = (message: FromPyramid) => void

const NOT_BUILT = 'the program that makes pictures is not there: build the project with "npm run build"'

/** @param program the built program; without it only the picture of the whole is made, in this process */
export function runPyramid(program: string | undefined, order: ToPyramid, told: Told): RunningPyramid {
  return program === undefined ? runHere(order, told) : runProgram(program, order, told)
}

function runHere(order: ToPyramid, told: Told): RunningPyramid {
  let stopped = false
  const make = async (): Promise<'done' | 'stopped'> => {
    if (order.make !== 'whole') throw new Error(NOT_BUILT)
    await makePictures(order, (message) => {
      if (!stopped) told(message)
    })
    return stopped ? 'stopped' : 'done'
  }
  return {
    ended: make(),
    stop: () => {
      stopped = true
    },
  }
}

function runProgram(program: string, order: ToPyramid, told: Told): RunningPyramid {
  const child: ChildProcess = fork(program, [], {
    stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
    execArgv: [],
  })
  let stopped = false
  const ended = new Promise<'done' | 'stopped'>((resolve, reject) => {
    let outcome: 'done' | Error | undefined
    child.on('message', (message: FromPyramid) => {
      if (message.kind === 'done') outcome = 'done'
      else if (message.kind === 'failed') outcome = new Error(message.because)
      else if (!stopped) told(message)
    })
    // It may tell of several: not started, not reached, not ended.
    child.on('error', () => {
      outcome ??= new Error('the process that makes pictures could not be started')
      if (child.pid === undefined) reject(outcome)
    })
    child.once('close', (code, signal) => {
      if (stopped) resolve('stopped')
      else if (outcome === 'done') resolve('done')
      else reject(outcome ?? new Error(`the process that makes pictures ended early (${signal ?? code})`))
    })
  })
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
