import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { placeInWords } from '../../../src/main/services/known-jobs/place-in-words.ts'
import { RecentJobs } from '../../../src/main/services/known-jobs/recent-jobs.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'

const job = (number: number) => ({
  folder: `/jobs/${number}`,
  title: `Job ${number}`,
  openedAt: `2026-03-01T08:${String(number).padStart(2, '0')}:00.000Z`,
})

describe('the list of recent jobs', () => {
  test('has the newest first, each job once, and no more than twelve', async () => {
    const recent = new RecentJobs(join(await temporaryFolder(), 'settings'), () => undefined)
    for (let number = 1; number <= 15; number++) await recent.add(job(number))
    await recent.add({ ...job(10), title: 'Job 10, renamed' })
    const list = await recent.list()
    expect(list.map(({ title }) => title)).toEqual([
      'Job 10, renamed',
      ...[15, 14, 13, 12, 11, 9, 8, 7, 6, 5, 4].map((number) => `Job ${number}`),
    ])
    expect(list[1]).toMatchObject({ place: '/jobs/15', openedAt: '2026-03-01T08:15:00.000Z' })
  })

  test('names jobs by ids that tell nothing of the folder, hold for one run and are not on disk', async () => {
    const settings = await temporaryFolder()
    const recent = new RecentJobs(settings, () => undefined)
    await recent.add(job(1))
    const [first] = await recent.list()
    const [again] = await recent.list()
    expect(first?.id).toBe(again?.id)
    expect(await recent.find(first?.id ?? '')).toMatchObject({ folder: '/jobs/1' })
    const other = new RecentJobs(settings, () => undefined)
    expect((await other.list())[0]?.title).toBe('Job 1')
    expect(await other.find(first?.id ?? '')).toBeUndefined()
    expect(await readFile(join(settings, 'recent.json'), 'utf8')).not.toContain(first?.id)
  })

  test('keeps up with a job that is opened again and given another title', async () => {
    const settings = await temporaryFolder()
    const recent = new RecentJobs(settings, () => undefined)
    await recent.add(job(1))
    await Promise.all([recent.retitle('/jobs/1', 'Another'), recent.add(job(2))])
    const other = new RecentJobs(settings, () => undefined)
    expect((await other.list()).map(({ title }) => title)).toEqual(['Job 2', 'Another'])
  })

  test('is shared: what another process added stays', async () => {
    const settings = await temporaryFolder()
    const [here, there] = [
      new RecentJobs(settings, () => undefined),
      new RecentJobs(settings, () => undefined),
    ]
    await here.add(job(1))
    await there.add(job(2))
    await here.add(job(3))
    await here.drop('/jobs/1')
    expect((await new RecentJobs(settings, () => undefined).list()).map(({ title }) => title)).toEqual([
      'Job 3',
      'Job 2',
    ])
  })

  test.each(['{', '[]', '{"format":"scantling-recent","version":1,"jobs":[{"folder":7}]}', '\u0000'])(
    'that is damaged (%j) is set aside, said in one line, and begun anew',
    async (text) => {
      const settings = await temporaryFolder()
      await writeFile(join(settings, 'recent.json'), text)
      const log: string[] = []
      const recent = new RecentJobs(settings, (line) => log.push(line))
      expect(await recent.list()).toEqual([])
      expect(log).toHaveLength(1)
      expect(log[0]).toContain('set aside')
      expect(await readFile(join(settings, 'recent.json.damaged'), 'utf8')).toBe(text)
      await recent.add(job(1))
      expect((await readdir(settings)).sort()).toEqual(['recent.json', 'recent.json.damaged'])
    },
  )

  test("that can't be written is said, and the work goes on", async () => {
    const settings = join(await temporaryFolder(), 'settings')
    await writeFile(settings, 'a file where the folder should be')
    const log: string[] = []
    const recent = new RecentJobs(settings, (line) => log.push(line))
    await recent.add(job(1))
    expect((await recent.list()).map(({ title }) => title)).toEqual(['Job 1'])
    expect(log.at(-1)).toContain('could not be written')
  })
})

test('a place below the home folder is shown with ~, another as it is', async () => {
  const home = await temporaryFolder()
  await mkdir(join(home, 'Scantling'))
  expect(placeInWords(join(home, 'Scantling', 'Drum'), home)).toBe(join('~', 'Scantling', 'Drum'))
  expect(placeInWords(home, home)).toBe('~')
  expect(placeInWords(`${home}-other`, home)).toBe(`${home}-other`)
  expect(placeInWords('/srv/jobs/drum', home)).toBe('/srv/jobs/drum')
})
