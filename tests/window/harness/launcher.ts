import type { Page } from 'playwright-core'
import { electronLauncher } from './electron-launcher.ts'
import type { Faults } from './faults.ts'
import { localLauncher } from './local-launcher.ts'
import type { Opens } from './program.ts'

/** Pixels of the page itself. */
export interface WindowSize {
  width: number
  height: number
}

export interface WindowWanted {
  opens: Opens
  /** Below it are the settings and the new jobs of this window alone. */
  home: string
  size?: WindowSize
  scheme?: 'light' | 'dark'
  /** Whether nobody has said yet who is at work; else A. Rivet has. */
  isStranger?: boolean
}

/** A window of the program with a page in it. */
export interface OpenedWindow {
  page: Page
  faults: Faults
  /** What the host wrote: one line for each request that it refused. */
  log: readonly string[]
  /** Closes the window and waits until the program has ended by itself, with the job saved. */
  close(): Promise<void>
  /** Ends the host as a power cut would; what is left of the window goes with `close`. */
  kill(): Promise<void>
}

/** One of the program's two hosts, so that the same tests drive both. */
export interface Launcher {
  name: string
  open(wanted: WindowWanted): Promise<OpenedWindow>
  /** After the last window, where the process is to go on. */
  end(): Promise<void>
}

export const PLAIN_SIZE: WindowSize = { width: 1600, height: 1000 }

/** The hosts that there are on this machine. */
export const launchers = (): Launcher[] => {
  const desktop = electronLauncher()
  return desktop === undefined ? [localLauncher()] : [localLauncher(), desktop]
}
