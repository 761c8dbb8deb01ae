import { cp, mkdir, rename, rm, symlink, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { aWorkbench } from '../fixtures/a-workbench.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

/** A workbench in a home of its own, with a job on its shelf. */
async function atHome() {
  const home = await temporaryFolder()
  const { folder } = await workshopJob()
  const shelf = join(home, 'Scantling')
  const places = {
    settings: join(home, '.settings'),
    shelf,
    sample: folder,
    temporary: join(home, '.temporary'),
  }
  await mkdir(shelf)
  await cp(folder, join(shelf, 'drum'), { recursive: true })
  return { home, shelf, folder, ...(await aWorkbench({ home, places })) }
}

describe('the list of jobs', () => {
  test('has those that were open before, the last one first, and then all that are on the shelf, each once', async () => {
    const { bench, ask, shelf, folder } = await atHome()
    await cp(folder, join(shelf, 'cone'), { recursive: true })
    await mkdir(join(shelf, 'no job'))
    await writeFile(join(shelf, 'a file'), '')
    const titles = async () => (await ask('jobs', {})).jobs.map(({ title }) => title)
    expect(await titles()).toEqual(['cone', 'drum'])
    await bench.openFolder(join(shelf, 'drum'))
    expect(await titles()).toEqual(['Drum of the chain ferry', 'cone'])
    expect((await ask('jobs', {})).shelf).toBe(shelf)
  })

  test('says of each how it stands, and has a small picture of its first sheet, without opening it', async () => {
    const { bench, ask } = await atHome()
    const [job] = (await ask('jobs', {})).jobs
    const glance = await ask('glance', { job: job?.id ?? '' })
    expect(glance).toMatchObject({ title: 'Drum of the chain ferry', sheets: 1, disputed: 0 })
    expect(glance.dimensions).toBeGreaterThan(0)
    const picture = await bench.picture(glance.front ?? '')
    expect(picture?.type).toBe('image/jpeg')
    expect([...(picture?.bytes ?? []).slice(0, 2)]).toEqual([0xff, 0xd8])
    expect(await bench.picture((glance.front ?? '').replace(/[^/]+$/, 'another'))).toBeNull()
    expect((await ask('look', {})).opened).toBeNull()
  })

  test('counts what is disputed and what has no value, and counts anew when the job went on', async () => {
    const { bench, ask, shelf } = await atHome()
    const folder = join(shelf, 'drum')
    const [job] = (await ask('jobs', {})).jobs
    const before = await ask('glance', { job: job?.id ?? '' })
    await bench.openFolder(folder)
    const item = { name: 'cone_rise', label: 'Cone rise', kind: 'length' as const, evidence: [] }
    await ask('edit', { edit: { do: 'add-dimension', item }, by: 'AR' })
    await ask('close-job', {})
    expect(await ask('glance', { job: job?.id ?? '' })).toMatchObject({
      dimensions: before.dimensions + 1,
      noValue: before.noValue + 1,
    })
  })

  test('says why a job can’t be read', async () => {
    const { ask, shelf } = await atHome()
    await writeFile(join(shelf, 'drum', 'job.json'), '{')
    const [job] = (await ask('jobs', {})).jobs
    expect((await ask('glance', { job: job?.id ?? '' })).problem).toMatch(/^.+job\.json.+\.$/)
  })
})

describe('a job that was moved', () => {
  test('is said to be gone, is found by its id wherever it is below the home folder, and said to be found', async () => {
    const { bench, ask, home, shelf } = await atHome()
    await bench.openFolder(join(shelf, 'drum'))
    await ask('edit', { edit: { do: 'describe', set: { title: 'Drum' } }, by: 'AR' })
    await ask('close-job', {})
    const away = join(home, 'old', 'works')
    await mkdir(away, { recursive: true })
    await rename(join(shelf, 'drum'), join(away, 'ferry drum'))
    const [gone] = (await ask('jobs', {})).jobs
    expect(gone).toMatchObject({ title: 'Drum', isGone: true, place: join(shelf, 'drum') })
    const { opened, recent } = await ask('open-recent', { recent: gone?.id ?? '' })
    expect(opened?.place).toBe(join(away, 'ferry drum'))
    expect(opened?.notices).toEqual([
      `The job "Drum" was moved from ${join(shelf, 'drum')} and found in ${join(away, 'ferry drum')}.`,
    ])
    expect(recent.map(({ place }) => place)).toEqual([join(away, 'ferry drum')])
  })

  test('out of the home folder is not found, stays on the list until it is shown or taken off', async () => {
    const { bench, ask, refused, shelf } = await atHome()
    await bench.openFolder(join(shelf, 'drum'))
    await ask('edit', { edit: { do: 'describe', set: { title: 'Drum' } }, by: 'AR' })
    await ask('close-job', {})
    const elsewhere = join(await temporaryFolder(), 'drum')
    await rename(join(shelf, 'drum'), elsewhere)
    const [gone] = (await ask('jobs', {})).jobs
    expect(await refused('open-recent', { recent: gone?.id ?? '' })).toContain('say where it is')
    expect((await ask('jobs', {})).jobs).toHaveLength(1)
    await bench.openFolder(elsewhere)
    const now = (await ask('jobs', {})).jobs
    expect(now.map(({ place, isGone }) => [place, isGone])).toEqual([[elsewhere, undefined]])
    expect((await ask('forget-job', { job: now[0]?.id ?? '' })).jobs).toEqual([])
  })
})

describe('the folders that a job is chosen among', () => {
  test('are those below the home folder by their names, with no file, nothing hidden and no link', async () => {
    const { ask, home } = await atHome()
    await mkdir(join(home, '.secret'))
    await writeFile(join(home, 'letter.txt'), '')
    await symlink(await temporaryFolder(), join(home, 'way-out'))
    const look = await ask('look-in-folder', {})
    expect(look).toMatchObject({ up: null, more: 0, folders: [{ name: 'Scantling', isJob: false }] })
    const inside = await ask('look-in-folder', { folder: look.folders[0]?.id ?? '' })
    expect(inside.folders).toMatchObject([{ name: 'drum', isJob: true }])
    expect((await ask('look-in-folder', { folder: inside.up ?? '' })).place).toBe(look.place)
    const [drum] = inside.folders
    expect((await ask('open-recent', { recent: drum?.id ?? '' })).opened?.job.title).toBe(
      'Drum of the chain ferry',
    )
  })

  test('are no others: not by a path, not above the home folder, not by a link that took the place of one', async () => {
    const { bench, ask, refused, home, folder } = await atHome()
    for (const way of [home, '/', '..', '../..', 'x'])
      expect(await refused('look-in-folder', { folder: way })).toContain('not known here any more')
    await bench.openFolder(folder)
    const outside = (await ask('jobs', {})).jobs.find(({ place }) => place === folder)
    expect(await refused('look-in-folder', { folder: outside?.id ?? '' })).toContain(
      'Only folders below your home folder',
    )
    await mkdir(join(home, 'swapped'))
    const swapped = (await ask('look-in-folder', {})).folders.find(({ name }) => name === 'swapped')
    await rm(join(home, 'swapped'), { recursive: true })
    await symlink('/', join(home, 'swapped'))
    expect(await refused('look-in-folder', { folder: swapped?.id ?? '' })).toContain(
      'Only folders below your home folder',
    )
    await rm(join(home, 'swapped'))
    await mkdir(join(home, '.hidden'))
    await symlink(join(home, '.hidden'), join(home, 'swapped'))
    expect(await refused('look-in-folder', { folder: swapped?.id ?? '' })).toContain(
      'Only folders below your home folder',
    )
  })
})
