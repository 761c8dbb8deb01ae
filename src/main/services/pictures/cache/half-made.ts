import { randomBytes } from 'node:crypto'
import { lstat, readdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { hasEnded, machineMark } from '../../machine/this-machine.ts'

/** At the end of a name while what it names is being made: the machine, the process, its run, and which one. */
const NAME = /\.([0-9a-f]{8})-(\d+)-([0-9a-f]{8})-[0-9a-f]+\.tmp$/
const ANY = /\.tmp$/

/** Milliseconds after which nobody works on it any more, wherever it was begun. */
const GIVEN_UP = 7 * 24 * 60 * 60 * 1000

/** Numbers of processes are given out again. */
const RUN = randomBytes(4).toString('hex')

/** Names what this process is making. */
export const ownMark = (): string => `${machineMark()}-${process.pid}-${RUN}`

/** A name of its own for what this process is making. */
export const halfMade = (name: string): string => `${name}.${ownMark()}-${randomBytes(8).toString('hex')}.tmp`

async function isLeft(path: string, name: string): Promise<boolean> {
  const [, mark, pid, run] = NAME.exec(name) ?? []
  if (mark === machineMark()) {
    if (Number(pid) === process.pid ? run !== RUN : hasEnded(Number(pid))) return true
  }
  return Date.now() - (await lstat(path)).mtimeMs > GIVEN_UP
}

/** Removes what this process began in a folder under one of these names, once nobody is at it any more. */
export async function removeOwn(folder: string, names: readonly string[]): Promise<void> {
  for (const name of await readdir(folder).catch(() => [])) {
    const began = names.some((one) => name.startsWith(`${one}.${ownMark()}-`))
    if (began && ANY.test(name)) await rm(join(folder, name), { recursive: true, force: true })
  }
}

/** Removes what processes that died left half-made in a folder; what others may still be making stays. */
export async function removeHalfMade(folder: string): Promise<void> {
  for (const name of await readdir(folder)) {
    if (!ANY.test(name)) continue
    const path = join(folder, name)
    if (await isLeft(path, name).catch(() => false)) await rm(path, { recursive: true, force: true })
  }
}
