import { randomInt } from 'node:crypto'
import { cp, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { Readable, Writable } from 'node:stream'
import { expect, test } from 'vitest'
import { applyEdit } from '../../../src/core/job/edits/edit.ts'
import { mintedFor } from '../../../src/core/job/ids/id-form.ts'
import type { Job } from '../../../src/core/job/model/types.ts'
import { makeEdits } from '../../../src/main/cli/actions/make-edits.ts'
import { Output } from '../../../src/main/cli/output/output.ts'
import { readJobFolder } from '../../../src/main/services/job-folder/read-job-folder.ts'
import { mint } from '../../../src/renderer/bench/mint.ts'
import { type Chance, idsSince, oneOf, WAYS_BY_HAND, WAYS_OF_A_WINDOW } from '../../core/job/ids/additions.ts'
import { aWorkbench } from '../fixtures/a-workbench.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { drawScan, workshopJob } from '../fixtures/workshop-job.ts'

const IN_A_WINDOW = 400
const BY_HAND = 100
const chance: Chance = (below) => randomInt(below)

async function jobIn(folder: string): Promise<Job> {
  return (await readJobFolder(folder)).job
}

/** Adds to a job by a window: marks and what is made of them, sheets, and people who come in by what they add. */
async function addInAWindow(folder: string): Promise<void> {
  const { bench, ask, handOver } = await aWorkbench()
  let job = (await bench.openFolder(folder)).opened?.job
  const desk = await temporaryFolder()
  for (let n = 0; n < IN_A_WINDOW; n++) {
    if (n % 100 === 50) {
      const upload = await handOver(await drawScan(join(desk, `another ${n}.png`), 60 + n / 10))
      await ask('add-sheets', { upload, by: 'A. Rivet' })
      job = (await ask('look', {})).opened?.job
      continue
    }
    if (job === undefined) throw new Error('The job is open.')
    const by = n % 20 === 0 ? `Newcomer ${n}` : 'A. Rivet'
    const edit = oneOf(WAYS_OF_A_WINDOW, chance)(job, mint, chance)
    const { edits } = await ask('edit', { edit, by })
    job = edits.reduce((before, one) => applyEdit(before, one.edit).job, job)
  }
  await ask('close-job', {})
}

/** Adds to a job by edits that give no ids. */
async function addByHand(folder: string): Promise<string> {
  const job = await jobIn(folder)
  const lines = Array.from({ length: BY_HAND }, () =>
    JSON.stringify(oneOf(WAYS_BY_HAND, chance)(job, chance)),
  )
  const file = join(await temporaryFolder(), 'edits.ndjson')
  await writeFile(file, lines.join('\n'))
  let said = ''
  const stdout = new Writable({
    write(chunk: Buffer, _, done) {
      said += chunk.toString()
      done()
    },
  })
  await makeEdits(new Output({ stdin: Readable.from([]), stdout, stderr: stdout }, false), folder, file, {
    by: 'A. Rivet',
  })
  return said
}

test('two copies of a folder, added to 500 times each by windows and by hand, share no new id', async () => {
  const { folder, job: before } = await workshopJob()
  const copy = join(await temporaryFolder(), 'copy')
  await cp(folder, copy, { recursive: true })
  const added: Set<string>[] = []
  for (const one of [folder, copy]) {
    await addInAWindow(one)
    const said = await addByHand(one)
    expect(said.match(/^ok \d+: /gm)).toHaveLength(BY_HAND)
    const ids = idsSince(before, await jobIn(one))
    expect(ids.size).toBeGreaterThan(IN_A_WINDOW + BY_HAND)
    expect([...ids].filter((id) => mintedFor(id) === undefined)).toEqual([])
    for (const [id] of said.matchAll(/[a-z]-[0-9a-z]{13}/g)) expect(ids.has(id)).toBe(true)
    added.push(ids)
  }
  const [first = new Set(), second = new Set()] = added
  expect([...first].filter((id) => second.has(id))).toEqual([])
})
