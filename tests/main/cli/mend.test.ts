import { cp, readdir, readFile, rename, rm, truncate, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { writeHolder } from '../../../src/main/services/job-folder/lock/lock-holder.ts'
import { openJob } from '../../../src/main/services/job-folder/open-job.ts'
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
  expect([mended.code, mended.stderr]).toEqual([
    0,
    expect.stringMatching(
      /^Note: The lock of rivet on bench-2\.invalid .+ was taken over, as was asked; .+\n$/,
    ),
  ])
  expect(mended.stdout).toMatch(/^The job goes on from history\.ndjson, at edit 1;/)
})

/** A job whose history was removed while it was open: saved at edit 1, its edits 2 and 3 are only in what was rescued. */
async function rescuedJob(): Promise<{ folder: string; name: string }> {
  const { folder } = await workshopJob()
  await withJob(folder, async (session) => session.edit(pick('a'), 'AR'))
  const session = await openJob(folder, { mode: 'write' })
  await session.edit(pick('b'), 'AR')
  await session.edit(pick('c'), 'AR')
  await rm(join(folder, 'history.ndjson'))
  await expect(session.edit(pick('d'), 'AR')).rejects.toThrow(
    `let "scantling mend ${folder}" say what it can go on from; or put job.json and history.ndjson from there in the place of those of ${folder}.`,
  )
  await session.close()
  return { folder, name: (await readdir(folder)).find((one) => one.startsWith('rescued-')) ?? '' }
}

test('what was rescued while the job was open is named by every refusal, and can be gone on from', async () => {
  const { folder, name } = await rescuedJob()
  const path = join(folder, name)
  const refused = await scantling('table', folder)
  expect(refused.code).toBe(2)
  expect(refused.stderr).toContain(`edits that were acknowledged while it was open last are in ${path}`)
  const said = await scantling('mend', folder)
  expect(said.stdout).toContain(
    'job.json: "Drum of the chain ferry" as of edit 1, 2 dimensions, 5 marks; going on from it leaves behind 2 acknowledged edits by A. Rivet.',
  )
  expect(said.stdout).toMatch(
    /rescued-\S+, kept when others changed the folder while the job was open: "Drum of the chain ferry" as of edit 3 \(the last by A\. Rivet, [^)]+\), 2 dimensions, 7 marks\./,
  )
  expect(said.stdout).toContain("history.ndjson can't be gone on from")
  expect(said.stdout).toContain(
    `To go on from one of them: scantling mend ${folder} --from job, or --from rescued. What the files were is kept.`,
  )
  const wrong = await scantling('mend', folder, '--from', 'history')
  expect([wrong.code, wrong.stderr]).toEqual([
    2,
    expect.stringMatching(
      /what can be gone on from: --from job \(which leaves behind 2 acknowledged edits by A\. Rivet\), --from rescued\.\n$/,
    ),
  ])
  expect(await readdir(folder)).not.toContain('set-aside')

  const mended = await scantling('mend', folder, '--from', 'rescued')
  expect([mended.code, mended.stderr]).toEqual([0, ''])
  expect(mended.stdout).toMatch(
    /^The job goes on from .+rescued-\S+, at edit 3; its files as they were are in .+\.\n$/,
  )
  expect(await readdir(folder)).toContain(name)
  await withJob(folder, async (session) => {
    expect(session.notices).toEqual([])
    expect(session.undoName).toBe('add mark c')
  })
  expect((await scantling('mend', folder)).stdout).toMatch(/^Nothing is wrong with .+\.\n$/)
})

test('after going on from another file, a rescue that holds more is named until it is moved away', async () => {
  const { folder, name } = await rescuedJob()
  const mended = await scantling('mend', folder, '--from', 'job')
  expect(mended.stdout).toMatch(
    /^The job goes on from job\.json, at edit 1; it leaves behind 2 acknowledged edits by A\. Rivet; /,
  )
  expect(mended.stdout).toContain(
    `What was rescued holds edits that the job does not have now. To go on from it instead: scantling mend ${folder} --from rescued.`,
  )
  expect((await scantling('mend', folder)).stdout).toContain(`${name}, kept when others changed the folder`)
  await withJob(folder, async (session) =>
    expect(session.notices.map(({ code }) => code)).toEqual(['rescue.holds-more']),
  )
  const back = await scantling('mend', folder, '--from', name)
  expect(back.code).toBe(0)
  await withJob(folder, async (session) => expect(session.job.marks.at(-1)?.id).toBe('c'))
})

test('only what can be gone on from is offered', async () => {
  const { folder } = await workshopJob()
  await withJob(folder, async (session) => session.edit(pick('a'), 'AR'))
  await rm(join(folder, 'job.json'))
  const said = await scantling('mend', folder)
  expect(said.stdout).toContain(`To go on from that: scantling mend ${folder} --from history.`)
  const wrong = await scantling('mend', folder, '--from', 'job')
  expect([wrong.code, wrong.stderr]).toEqual([
    2,
    expect.stringMatching(
      /job\.json can't be gone on from: .+; what can be gone on from: --from history\.\n$/,
    ),
  ])
  const none = await scantling('mend', folder, '--from', 'rescued')
  expect([none.code, none.stderr]).toEqual([2, expect.stringContaining('there is no "rescued"')])
  await rm(join(folder, 'history.ndjson'))
  expect((await scantling('mend', folder)).stdout).toContain('None of them can be gone on from')
})

test("what was rescued of another job is not this job's", async () => {
  const [one, other] = [await rescuedJob(), await rescuedJob()]
  const path = join(one.folder, one.name)
  await rm(path, { recursive: true })
  await cp(join(other.folder, other.name), path, { recursive: true })
  expect((await scantling('mend', one.folder)).stdout).not.toContain('rescued-')
})

test('what is gone of a history that was overwritten while the job was open is said, before and after mending', async () => {
  const { folder } = await workshopJob()
  await withJob(folder, async (session) => session.edit(pick('a'), 'AR'))
  const session = await openJob(folder, { mode: 'write' })
  await session.edit(pick('b'), 'AR')
  await truncate(join(folder, 'history.ndjson'), 0)
  await expect(session.edit(pick('c'), 'AR')).rejects.toThrow('its history begins with edit 2')
  await session.close()
  const gone =
    "its history begins with edit 2, and what was done before that can't be told or undone any more"
  expect((await scantling('mend', folder)).stdout).toMatch(new RegExp(`rescued-.+ 6 marks; ${gone}\\.\n`))
  const mended = await scantling('mend', folder, '--from', 'rescued')
  expect([mended.code, mended.stdout]).toEqual([
    0,
    expect.stringContaining(`, at edit 2; ${gone}; its files`),
  ])
  const history = await scantling('history', folder)
  expect([history.code, history.stdout]).toEqual([0, expect.stringContaining('picked mark b')])
})

test('a rescue whose edits the job holds itself is not gone on from, and it is said why', async () => {
  const { folder } = await workshopJob()
  const old = await readFile(join(folder, 'job.json'))
  const session = await openJob(folder, { mode: 'write' })
  await session.edit(pick('a'), 'AR')
  await session.save()
  await writeFile(join(folder, 'job.json'), old)
  await expect(session.edit(pick('b'), 'AR')).rejects.toThrow(
    'it is enough to close the job and open it again',
  )
  await session.close()
  expect((await scantling('mend', folder)).stdout).toMatch(/^Nothing is wrong with .+\.\n$/)
  const rescued = await scantling('mend', folder, '--from', 'rescued')
  expect([rescued.code, rescued.stderr]).toEqual([
    2,
    expect.stringMatching(
      /the job already holds all that the rescue .+ holds, so nothing is to be done\.\n$/,
    ),
  ])
  const other = await scantling('mend', folder, '--from', 'rescued-2020')
  expect(other.stderr).toContain(
    '--from job (which leaves behind 1 acknowledged edit by A. Rivet), --from history.',
  )
})

test('of a folder that was moved away nothing is offered that can not be done', async () => {
  const { folder } = await workshopJob()
  const session = await openJob(folder, { mode: 'write' })
  await session.edit(pick('a'), 'AR')
  await rename(folder, `${folder}-moved`)
  await expect(session.edit(pick('b'), 'AR')).rejects.toThrow('moved or removed while this job was open')
  await session.close()
  const said = await scantling('mend', folder)
  expect(said.code).toBe(0)
  expect(said.stdout).toContain(`There is no folder ${folder}`)
  expect(said.stdout).toContain(`what was kept of it is in ${folder}-rescued-`)
  expect(said.stdout).not.toContain('--from')
  const refused = await scantling('mend', folder, '--from', 'rescued')
  expect([refused.code, refused.stderr]).toEqual([2, expect.stringContaining(`There is no folder ${folder}`)])
  expect((await scantling('mend', `${folder}-moved`)).stdout).toMatch(/^Nothing is wrong with /)
  await rename(`${folder}-moved`, folder)
  expect((await scantling('mend', folder)).stdout).toMatch(/^Nothing is wrong with .+\.\n$/)
})
