import { appendFile, mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { pictureAddress } from '../../../src/contract/picture-addresses.ts'
import { parseJobText } from '../../../src/core/job/parse-job-text.ts'
import { writeHolder } from '../../../src/main/services/job-folder/lock/lock-holder.ts'
import { openJob } from '../../../src/main/services/job-folder/open-job.ts'
import { aWorkbench } from '../fixtures/a-workbench.ts'
import { folderSnapshot } from '../fixtures/folder-snapshot.ts'
import { holderElsewhere } from '../fixtures/lock-file.ts'
import { point } from '../fixtures/picked-point.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { drawScan, workshopJob } from '../fixtures/workshop-job.ts'

const pick = (id: string) => ({ do: 'add-mark' as const, item: point(id, 10, 20) })

describe('an empty bench', () => {
  test('says what it is, and that no job is open', async () => {
    const { ask, refused } = await aWorkbench()
    expect(await ask('look', {})).toEqual({
      version: '1.2.3',
      host: 'local',
      person: '',
      choosesFolders: false,
      recent: [],
      opened: null,
    })
    expect(await refused('undo', { by: 'A. Rivet' })).toBe('No job is open: open one first.')
    expect(await ask('close-job', {})).toMatchObject({ opened: null })
  })
})

describe('opening a folder', () => {
  test('tells every window, and puts the job on the list of recent ones', async () => {
    const { bench, ask, events } = await aWorkbench()
    const { folder, job } = await workshopJob()
    const state = await bench.openFolder(folder)
    expect(state.opened).toMatchObject({
      job,
      n: 0,
      place: folder,
      sample: false,
      writable: true,
      notices: [],
      scans: [{ sheet: 'S1', state: 'ok', sentence: '' }],
      savedAt: null,
    })
    expect(events).toEqual([{ kind: 'bench', state }])
    const [recent] = state.recent
    expect(recent).toMatchObject({ title: 'Drum of the chain ferry', place: folder })
    await ask('close-job', {})
    expect((await ask('open-recent', { recent: recent?.id ?? '' })).opened?.place).toBe(folder)
  })

  test('closes and saves the one before it', async () => {
    const { bench, ask } = await aWorkbench()
    const [first, second] = [await workshopJob(), await workshopJob()]
    await bench.openFolder(first.folder)
    await ask('edit', { edit: pick('M5'), by: 'AR' })
    await bench.openFolder(second.folder)
    expect((await readdir(first.folder)).includes('.lock')).toBe(false)
    const saved = parseJobText(await readFile(join(first.folder, 'job.json'), 'utf8'))
    expect(saved.marks.at(-1)?.id).toBe('M5')
  })

  test('that fails leaves the one before it open, and says why', async () => {
    const { bench, ask } = await aWorkbench()
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    await ask('edit', { edit: pick('M5'), by: 'AR' })
    const empty = await temporaryFolder()
    await expect(bench.openFolder(empty)).rejects.toThrow('it holds no job.json')
    await expect(bench.openFolder(join(empty, 'nowhere'))).rejects.toThrow('does not exist')
    const { opened } = await ask('look', {})
    expect(opened).toMatchObject({ place: folder, writable: true, n: 1, undoName: 'add mark M5' })
    await ask('undo', { by: 'AR' })
  })

  test('that is open already keeps what can be undone', async () => {
    const { bench, ask } = await aWorkbench()
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    await ask('edit', { edit: pick('M5'), by: 'AR' })
    expect((await bench.openFolder(`${folder}/.`)).opened?.undoName).toBe('add mark M5')
  })

  test('that somebody holds gives it read-only, says who, once, and changes nothing in it', async () => {
    const { bench, refused, handOver, ask } = await aWorkbench()
    const { folder, scan } = await workshopJob()
    const holder = await openJob(folder, { mode: 'write' })
    const before = await folderSnapshot(folder)
    const { opened } = await bench.openFolder(folder)
    expect(opened?.writable).toBe(false)
    expect(opened?.readOnlyBecause).toMatch(
      /^The job is open read-only: it is open for writing by .+ \(process \d+\) since .+; ask them to close it\.$/,
    )
    expect(opened?.notices).toEqual([])
    expect(await refused('edit', { edit: pick('M5'), by: 'AR' })).toBe(opened?.readOnlyBecause)
    expect(await refused('add-sheets', { upload: await handOver(scan), by: 'AR' })).toBe(
      opened?.readOnlyBecause,
    )
    expect(await folderSnapshot(folder)).toEqual(before)
    await holder.close()
    expect(
      (await ask('open-recent', { recent: (await ask('look', {})).recent[0]?.id ?? '' })).opened,
    ).toMatchObject({ writable: true })
  })

  test('that went read-only while it was open opens anew for writing: its own lock does not keep it out', async () => {
    const { bench, ask } = await aWorkbench({ quiet: 20 })
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    await ask('edit', { edit: pick('M5'), by: 'AR' })
    await writeFile(join(folder, 'job.json'), `${await readFile(join(folder, 'job.json'), 'utf8')}\n`)
    while ((await ask('look', {})).opened?.writable) await new Promise((resolve) => setTimeout(resolve, 10))
    const { opened } = await bench.openFolder(folder)
    expect(opened?.readOnlyBecause).toBeUndefined()
    expect(opened).toMatchObject({ writable: true, n: 1, undoName: 'add mark M5' })
  })

  test('is told to a host that keeps track, each time, and only when it is open', async () => {
    const opened: string[] = []
    const { bench, ask } = await aWorkbench({ folderOpened: (folder) => opened.push(folder) })
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    await bench.openFolder(folder)
    await expect(bench.openFolder(await temporaryFolder())).rejects.toThrow()
    await ask('close-job', {})
    expect(opened).toEqual([folder])
  })

  test('tells what was recovered and what is wrong with the scans', async () => {
    const { bench } = await aWorkbench()
    const { folder, scan } = await workshopJob()
    await appendFile(join(folder, 'history.ndjson'), '{"n":1,"at"')
    await drawScan(scan, 90)
    const { opened } = await bench.openFolder(folder)
    expect(opened?.notices).toHaveLength(2)
    expect(opened?.notices[0]).toContain('was cut short while it was written')
    expect(opened?.scans[0]).toMatchObject({ sheet: 'S1', state: 'changed' })
    expect(opened?.notices[1]).toBe(opened?.scans[0]?.sentence)
  })
})

describe('a job whose lock nobody here can give back', () => {
  const locked = async () => {
    const { folder } = await workshopJob()
    const holder = holderElsewhere()
    await writeFile(join(folder, '.lock'), writeHolder(holder))
    return { folder, token: holder.token }
  }

  test('is shown with who holds it, and is taken over by whoever was told and asks; its sheets stay in sight', async () => {
    const { bench, ask, events } = await aWorkbench()
    const { folder, token } = await locked()
    const { opened } = await bench.openFolder(folder)
    expect(opened).toMatchObject({ writable: false, notices: [] })
    expect(opened?.lock).toEqual({
      id: token,
      holder: expect.stringMatching(
        /^rivet on bench-2\.invalid \(process \d+\) since 1 March 2026, \d\d:00$/,
      ),
    })
    const { version } = await ask('show-sheet', { sheet: 'S1' })
    const picture = pictureAddress({ sheet: 'S1', version, kind: 'overview' })
    expect(await bench.picture(picture)).not.toBeNull()
    const taken = await ask('take-over', { job: opened?.id ?? '', lock: opened?.lock?.id ?? '' })
    expect(taken.opened).toMatchObject({ id: opened?.id, writable: true })
    expect(taken.opened?.lock).toBeUndefined()
    expect(taken.opened?.notices).toEqual([expect.stringContaining('was taken over, as was asked')])
    expect(events.filter(({ kind }) => kind === 'bench').at(-1)).toEqual({ kind: 'bench', state: taken })
    expect(await bench.picture(picture)).not.toBeNull()
    await ask('edit', { edit: pick('M5'), by: 'AR' })
  })

  test('is not taken over when somebody else has it by now: that is said, with who', async () => {
    const { bench, ask, refused } = await aWorkbench()
    const { folder } = await locked()
    const { opened } = await bench.openFolder(folder)
    const other = { ...holderElsewhere(), token: 'f'.repeat(24), user: 'forge' }
    await writeFile(join(folder, '.lock'), writeHolder(other))
    const asked = { job: opened?.id ?? '', lock: opened?.lock?.id ?? '' }
    expect(await refused('take-over', asked)).toMatch(
      /^The job was not taken over: it is open for writing by forge on bench-2\.invalid /,
    )
    const now = (await ask('look', {})).opened
    expect(now).toMatchObject({ writable: false, lock: { id: other.token } })
  })

  test('that somebody at work holds is not offered, nor taken over', async () => {
    const { bench, refused } = await aWorkbench()
    const { folder } = await workshopJob()
    const holder = await openJob(folder, { mode: 'write' })
    const { opened } = await bench.openFolder(folder)
    expect(opened?.lock).toBeUndefined()
    const { token } = JSON.parse(await readFile(join(folder, '.lock'), 'utf8'))
    expect(await refused('take-over', { job: opened?.id ?? '', lock: token })).toContain(
      'ask them to close it',
    )
    await holder.edit(pick('M5'), 'AR')
    await holder.close()
  })
})

describe('a recent job', () => {
  test('goes by the title that it was given last', async () => {
    const { bench, ask } = await aWorkbench()
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    await ask('edit', { edit: { do: 'describe', set: { title: 'Drum, rebuilt' } }, by: 'AR' })
    expect((await ask('close-job', {})).recent.map(({ title }) => title)).toEqual(['Drum, rebuilt'])
  })

  test('that is gone and not found stays on the list, and what is open stays open', async () => {
    const home = await temporaryFolder()
    const { bench, ask, refused } = await aWorkbench({ home })
    const [first, second] = [await workshopJob(), await workshopJob()]
    await bench.openFolder(first.folder)
    await bench.openFolder(second.folder)
    const { recent } = await ask('look', {})
    await rename(first.folder, `${first.folder}-moved`)
    const gone = recent.find(({ place }) => place === first.folder)?.id ?? ''
    expect(await refused('open-recent', { recent: gone })).toMatch(
      /is no longer in .+, and was not found below your home folder/,
    )
    expect((await ask('look', {})).recent).toHaveLength(2)
    expect((await ask('look', {})).opened?.place).toBe(second.folder)
  })
})

describe("the system's own dialog", () => {
  test('opens the folder that was chosen; choosing none changes nothing', async () => {
    const { folder } = await workshopJob()
    const answers = [undefined, folder]
    const { ask } = await aWorkbench({ chooseJobFolder: async () => answers.shift() })
    expect(await ask('choose-job', {})).toMatchObject({ choosesFolders: true, opened: null })
    expect((await ask('choose-job', {})).opened?.place).toBe(folder)
  })

  test('is said to be missing where the host has none', async () => {
    const { refused } = await aWorkbench()
    expect(await refused('choose-job', {})).toContain('scantling open')
  })
})

describe('the sample', () => {
  test('is copied the first time, document, history and scans only, and the same copy is opened afterwards', async () => {
    const { ask, places } = await aWorkbench()
    await writeFile(join(places.sample, 'journal.ndjson'), '')
    const shipped = await folderSnapshot(places.sample)
    const { opened } = await ask('open-sample', {})
    expect(opened).toMatchObject({ sample: true, writable: true })
    const copy = join(places.shelf, 'Deck ventilator (sample)')
    expect((await readdir(copy)).sort()).toEqual(['.lock', 'history.ndjson', 'job.json', 'scans'])
    await ask('edit', { edit: pick('M5'), by: 'AR' })
    await ask('close-job', {})
    const again = await ask('open-sample', {})
    expect(again.opened?.job.marks.at(-1)?.id).toBe('M5')
    expect(await readdir(places.shelf)).toEqual(['Deck ventilator (sample)'])
    expect(await folderSnapshot(places.sample)).toEqual(shipped)
  })

  test('that another process has open is shown read-only', async () => {
    const first = await aWorkbench()
    await first.bench.openSample()
    const second = await aWorkbench({ places: { ...first.places, temporary: await temporaryFolder() } })
    expect((await second.ask('open-sample', {})).opened).toMatchObject({ sample: true, writable: false })
  })

  test('that is asked for twice at once is copied once', async () => {
    const { ask, places } = await aWorkbench()
    const states = await Promise.all([ask('open-sample', {}), ask('open-sample', {})])
    expect(states.map(({ opened }) => opened?.writable)).toEqual([true, true])
    expect(await readdir(places.shelf)).toHaveLength(1)
  })

  test("that can't be copied is refused in a sentence, and nothing half-made is left", async () => {
    const { refused, places } = await aWorkbench()
    await rm(join(places.sample, 'job.json'))
    await mkdir(places.shelf)
    expect(await refused('open-sample', {})).toContain("can't be copied")
    expect(await readdir(places.shelf)).toEqual([])
  })
})

describe('closing the bench', () => {
  test('saves the job, gives the folder back, removes what was temporary, and refuses what comes later', async () => {
    const { bench, ask, refused, handOver, places } = await aWorkbench()
    const { folder, scan } = await workshopJob()
    await bench.openFolder(folder)
    await handOver(scan)
    await ask('edit', { edit: pick('M5'), by: 'AR' })
    await bench.close()
    await bench.close()
    expect(parseJobText(await readFile(join(folder, 'job.json'), 'utf8')).edition).toBe(1)
    expect(await readdir(folder)).not.toContain('.lock')
    expect(await readdir(places.temporary)).toEqual([])
    expect(await refused('look', {})).toBe('The workbench is closed: start it again.')
    await expect(handOver(scan)).rejects.toThrow('closed')
    await expect(bench.openFolder(folder)).rejects.toThrow('closed')
  })

  test("when the job can't be saved says so, and every edit is in the history", async () => {
    const { bench, ask } = await aWorkbench()
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    await ask('edit', { edit: pick('M5'), by: 'AR' })
    await writeFile(join(folder, 'job.json'), `${await readFile(join(folder, 'job.json'), 'utf8')}\n`)
    await expect(bench.close()).rejects.toThrow('was changed, replaced or removed by another program')
    expect(await readFile(join(folder, 'history.ndjson'), 'utf8')).toContain('M5')
    expect(await readdir(folder)).not.toContain('.lock')
  })

  test('what a process of this machine that died left among the temporary files is removed by the next', async () => {
    const first = await aWorkbench()
    const { scan } = await workshopJob()
    await first.handOver(scan)
    const { places } = first
    const [own = ''] = await readdir(places.temporary)
    const [, machine, pid] = own.split('-')
    expect(pid).toBe(String(process.pid))
    // No process has this number: Linux counts to 2^22 at most.
    const dead = `bench-${machine}-99999999-0123456789abcdef`
    const elsewhere = 'bench-00000000-99999999-0123456789abcdef'
    for (const name of [dead, elsewhere, 'somebody else’s']) await mkdir(join(places.temporary, name))
    const next = await aWorkbench({ places })
    await next.handOver(scan)
    const names = await readdir(places.temporary)
    expect(names).toHaveLength(4)
    expect(names).toEqual(expect.arrayContaining([own, elsewhere, 'somebody else’s']))
  })
})
