import { cp, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { writeHolder } from '../../../src/main/services/job-folder/lock/lock-holder.ts'
import { readJobFolder } from '../../../src/main/services/job-folder/read-job-folder.ts'
import { shortcomings } from '../../core/handoff/annotations/out/required-properties.ts'
import { scantling } from '../fixtures/command-line.ts'
import { holderElsewhere } from '../fixtures/lock-file.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'

const SAMPLE = 'samples/deck-ventilator'

const notes = (...args: string[]) => scantling('notes', ...args)

/** A copy of the sample, without its notes when it is to take some over. */
async function copyOfSample(without = false): Promise<string> {
  const folder = join(await temporaryFolder(), 'ventilator')
  await cp(SAMPLE, folder, { recursive: true })
  if (without) {
    const path = join(folder, 'job.json')
    const job = JSON.parse(await readFile(path, 'utf8'))
    await writeFile(path, JSON.stringify({ ...job, notes: [] }))
  }
  return folder
}

describe('Notes on the command line', () => {
  it('are listed, with who wrote them and what they are about', async () => {
    const { code, stdout } = await notes(SAMPLE)
    expect(code).toBe(0)
    expect(stdout).toContain('N1  Stain over the figure; could not be lifted.')
    expect(stdout).toContain('hood_od)')
  })

  it('go from one job to another as they were but for their ids, and only once', async () => {
    const folder = await copyOfSample()
    const file = join(folder, '..', 'notes.jsonld')
    expect((await notes(folder, '--export', file)).code).toBe(0)
    expect(shortcomings(JSON.parse(await readFile(file, 'utf8')))).toEqual([])
    const other = await copyOfSample(true)
    const brought = await notes(other, '--import', file, '--by', 'om')
    expect(brought).toMatchObject({ code: 0, stderr: '' })
    expect(brought.stdout).toMatch(/^ok \d+: bring in 3 notes\n$/)
    const { job } = await readJobFolder(other)
    const before = (await readJobFolder(folder)).job.notes
    expect(job.notes).toEqual(
      before.map((note, i) => ({ ...note, id: expect.stringMatching(/^n-.{13}$/), number: i + 1 })),
    )
    expect((await notes(other)).stdout).toMatch(/^note 1 {2}/)
    expect((await notes(other, '--import', file)).stdout).toBe('Nothing was brought in.\n')
  })

  it('go into a job whose lock nobody can give back once that is taken over, as the refusal says', async () => {
    const file = join(await temporaryFolder(), 'notes.jsonld')
    await notes(SAMPLE, '--export', file)
    const folder = await copyOfSample(true)
    await writeFile(join(folder, '.lock'), writeHolder(holderElsewhere()))
    const refused = await notes(folder, '--import', file, '--by', 'om')
    expect([refused.code, refused.stdout]).toEqual([2, ''])
    const [, lock = ''] = /; to take it over, give --take-over ([0-9a-f]+)\.$/m.exec(refused.stderr) ?? []
    const brought = await notes(folder, '--import', file, '--by', 'om', '--take-over', lock)
    expect([brought.code, brought.stdout]).toEqual([0, expect.stringMatching(/^ok \d+: bring in 3 notes\n$/)])
    expect(brought.stderr).toContain('was taken over, as was asked')
  })

  it('are not written over a file, and come from no other kind of file', async () => {
    const folder = await copyOfSample()
    const file = join(folder, '..', 'there.jsonld')
    await writeFile(file, '{"type":"Feature"}')
    expect(await notes(folder, '--export', file)).toMatchObject({ code: 2, stdout: '' })
    expect(await readFile(file, 'utf8')).toBe('{"type":"Feature"}')
    const refused = await notes(folder, '--import', file)
    expect(refused.code).toBe(2)
    expect(refused.stderr).toContain('holds no Web Annotations')
    expect((await notes(folder, '--import', file, '--sheet', 'S9')).stderr).toContain('has no sheet "S9"')
  })
})
