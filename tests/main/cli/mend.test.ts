import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { writeHolder } from '../../../src/main/services/job-folder/lock/lock-holder.ts'
import { scantling } from '../fixtures/command-line.ts'
import { pick, withJob } from '../fixtures/history-folder.ts'
import { holderElsewhere } from '../fixtures/lock-file.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

test('scantling mend says what is wrong and what each file holds, and goes on from the one that is chosen', async () => {
  const { folder } = await workshopJob()
  await withJob(folder, async (session) => session.edit(pick('a'), 'AR'))
  expect(await scantling('mend', folder)).toEqual({
    code: 0,
    stdout: `Nothing is wrong with the files of ${folder}: job.json and history.ndjson belong together.\n`,
    stderr: '',
  })
  const path = join(folder, 'job.json')
  await writeFile(path, (await readFile(path, 'utf8')).replace('chain ferry', 'ferry'))
  const table = await scantling('table', folder)
  expect(table.code).toBe(0)
  expect(table.stderr).toContain('was changed by hand or by another program')
  const edit = await scantling('edit', folder, '--by', 'AR')
  expect([edit.code, edit.stderr]).toEqual([2, expect.stringContaining(`scantling mend ${folder}`)])
  const said = await scantling('mend', folder)
  expect(said.code).toBe(0)
  expect(said.stdout).toContain('job.json: "Drum of the ferry" as of edit 1, 2 dimensions, 5 marks.')
  expect(said.stdout).toContain(
    'history.ndjson: "Drum of the chain ferry" as of edit 1, 2 dimensions, 5 marks.',
  )
  const mended = await scantling('mend', folder, '--from', 'history')
  expect(mended.stdout).toMatch(
    /^The job goes on from history\.ndjson, at edit 1; its files as they were are in .+\.\n$/,
  )
  expect(await readFile(path, 'utf8')).toContain('chain ferry')
  expect((await scantling('check', folder)).stderr).toBe('')
})

test('mending takes a lock over that nobody can give back, as the refusal says', async () => {
  const { folder } = await workshopJob()
  await withJob(folder, async (session) => session.edit(pick('a'), 'AR'))
  await writeFile(join(folder, '.lock'), writeHolder(holderElsewhere()))
  const refused = await scantling('mend', folder, '--from', 'history')
  expect(refused.code).toBe(2)
  expect(refused.stderr).toMatch(
    /^The job .+ can't be edited now: it is open for writing by rivet on bench-2\.invalid /,
  )
  const [, lock = ''] = /; to take it over, give --take-over ([0-9a-f]+)\.\n$/.exec(refused.stderr) ?? []
  const mended = await scantling('mend', folder, '--from', 'history', '--take-over', lock)
  expect([mended.code, mended.stderr]).toEqual([0, ''])
  expect(mended.stdout).toMatch(/^The job goes on from history\.ndjson, at edit 1;/)
})
