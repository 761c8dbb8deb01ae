import { spawn } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { homedir } from 'node:os'
import { dirname } from 'node:path'
import { setTimeout as delay } from 'node:timers/promises'
import type { Surroundings } from '../services/places/places.ts'

/** How a program ended. */
export interface End {
  /** Its exit code; null when a signal ended it or it never began. */
  code: number | null
  /** Why it never began, or what ended it. */
  problem?: string
}

/** A program that was started. */
export interface Started {
  ended: Promise<End>
  stop(): void
}

/** What choosing and opening a window needs of the machine; a test puts its own in place. */
export interface LaunchSurroundings extends Surroundings {
  /** The user's number on systems that have them; 0 is root. */
  userId: number | undefined
  exists(path: string): boolean
  /** A file's text; undefined when it can't be read. */
  readText(path: string): string | undefined
  /** The folder of an installed package, without running anything of it; undefined when there is none. */
  packageFolder(name: string): string | undefined
  /** Whether an address answers a HEAD request with success within a time. */
  answers(url: string, milliseconds: number): Promise<boolean>
  /** @param shown whether its output is shown where this program's is */
  start(program: string, args: readonly string[], shown: boolean): Started
  wait(milliseconds: number): Promise<void>
}

function start(program: string, args: readonly string[], shown: boolean): Started {
  // Set by some programs that are built on Electron for their children; it would make a plain Node of ours.
  const { ELECTRON_RUN_AS_NODE: _, ...env } = process.env
  const child = spawn(program, [...args], {
    env,
    stdio: shown ? ['ignore', 'inherit', 'inherit'] : 'ignore',
  })
  // A browser may go on in the background for as long as it likes; this program does not wait for that.
  if (!shown) child.unref()
  const ended = new Promise<End>((resolve) => {
    child.on('error', (error) => resolve({ code: null, problem: error.message }))
    child.on('exit', (code, signal) => resolve({ code, ...(signal === null ? {} : { problem: signal }) }))
  })
  return { ended, stop: () => void child.kill() }
}

function textOf(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8')
  } catch {
    return undefined
  }
}

function packageFolder(name: string): string | undefined {
  try {
    return dirname(createRequire(import.meta.url).resolve(`${name}/package.json`))
  } catch {
    return undefined
  }
}

async function answers(url: string, milliseconds: number): Promise<boolean> {
  try {
    const signal = AbortSignal.timeout(milliseconds)
    return (await fetch(url, { method: 'HEAD', signal })).ok
  } catch {
    return false
  }
}

/** This machine. */
export const thisMachine = (): LaunchSurroundings => ({
  platform: process.platform,
  env: process.env,
  home: homedir(),
  userId: process.getuid?.(),
  exists: existsSync,
  readText: textOf,
  packageFolder,
  answers,
  start,
  wait: (milliseconds) => delay(milliseconds, undefined, { ref: false }),
})
