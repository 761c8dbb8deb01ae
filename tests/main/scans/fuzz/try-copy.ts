import { readdir } from 'node:fs/promises'
import { join } from 'node:path'
import { folderSnapshot } from '../../fixtures/folder-snapshot.ts'
import type { FuzzDesk } from './fuzz-desk.ts'
import type { SpoiledCopy } from './spoiled-copies.ts'

/** How a bench took a spoiled copy. */
export interface Outcome {
  number: number
  /** Kind and way of spoiling. */
  what: string
  taken: boolean
  /** Of the refusal. */
  sentence?: string
  /** Milliseconds of the longest ask. */
  longest: number
  /** What it did that it must not do; empty when all is well. */
  faults: string[]
}

/** The longest that an ask may take, milliseconds. */
export const LONGEST = 20_000

async function* once(bytes: Buffer): AsyncGenerator<Uint8Array> {
  yield bytes
}

/** Folders of the bench itself, empty, are no trace. */
const tracesIn = async (folder: string): Promise<string[]> =>
  Object.keys(await folderSnapshot(folder).catch(() => ({}))).filter((name) => !/^bench-[^/]*\/$/.test(name))

function faultsOf(sentence: string, called: string): string[] {
  const faults: string[] = []
  if (!sentence.endsWith('.')) faults.push(`no full stop: ${sentence}`)
  if (!sentence.includes(called)) faults.push(`does not name ${called}: ${sentence}`)
  return faults
}

/**
 * Hands a copy over, looks into it and asks for sheets of its pages; then the job folder must be as it was unless
 * sheets were made, and nothing may lie among the temporary files.
 * @param folder of the job that is open on the bench
 */
export async function tryCopy(
  { bench, temporary }: FuzzDesk,
  folder: string,
  copy: SpoiledCopy,
): Promise<Outcome> {
  const before = await folderSnapshot(folder)
  const { password, file } = copy.kind
  const key = password === undefined ? {} : { password }
  const faults: string[] = []
  let longest = 0
  const asked = async (name: 'look-into' | 'add-sheets', args: object) => {
    const begun = performance.now()
    const reply = await bench.ask(name, args)
    longest = Math.max(longest, performance.now() - begun)
    if (!reply.ok) faults.push(...faultsOf(reply.sentence, file))
    return reply
  }
  const upload = await bench.receiveScan(file, once(copy.bytes))
  const look = await asked('look-into', { upload, ...key })
  const looked = look.ok && 'looked' in (look.answer ?? {}) ? (look.answer as { looked: LookedPage[] }) : null
  for (const { fault } of looked?.looked ?? []) if (fault !== undefined) faults.push(...faultsOf(fault, ''))
  const good = looked?.looked.filter(({ fault }) => fault === undefined).map(({ page }) => ({ page })) ?? []
  // A file that was refused is asked for all the same, as a window might that did not look.
  const pages = good.length > 0 ? { pages: good } : {}
  const added = await asked('add-sheets', { upload, by: 'AR', ...key, ...pages })
  await bench.ask('drop-upload', { upload })
  if (longest > LONGEST) faults.push(`took ${Math.round(longest)} ms`)
  if (!added.ok) faults.push(...(await changesOf(folder, before)))
  const left = await tracesIn(temporary)
  if (left.length > 0) faults.push(`left among the temporary files: ${left.join(', ')}`)
  const strays = (await readdir(join(folder, 'scans'))).filter((name) => name.includes('.tmp'))
  if (strays.length > 0) faults.push(`left in scans: ${strays.join(', ')}`)
  return {
    number: copy.number,
    what: `${copy.kind.name}, ${copy.way}`,
    taken: added.ok,
    ...(added.ok ? {} : { sentence: added.sentence }),
    longest,
    faults,
  }
}

interface LookedPage {
  page: number
  fault?: string
}

async function changesOf(folder: string, before: Record<string, string>): Promise<string[]> {
  const after = await folderSnapshot(folder)
  const names = new Set([...Object.keys(before), ...Object.keys(after)])
  return [...names].filter((name) => before[name] !== after[name]).map((name) => `the job changed: ${name}`)
}
