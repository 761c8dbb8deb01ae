import { mkdir, readFile, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { pictureAddress } from '../../../src/contract/picture-addresses.ts'
import { aWorkbench } from '../fixtures/a-workbench.ts'
import { folderSnapshot } from '../fixtures/folder-snapshot.ts'
import { point } from '../fixtures/picked-point.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

const WAYS_OUT = [
  '../job.json',
  '../../../../../../etc/passwd',
  '..',
  '.',
  '/etc/passwd',
  'C:\\Windows\\win.ini',
  '..\\..\\job.json',
  '%2e%2e%2fjob.json',
  '%252e%252e%252fjob.json',
  '..%00.png',
  'S1\u0000',
  'S1/../S1',
  'file:///etc/passwd',
  '__proto__',
  'constructor',
  'x'.repeat(100_000),
]

const rings: Record<string, unknown> = {}
rings['ring'] = rings

const deep = (depth: number): unknown => {
  let value: unknown = 1
  for (let i = 0; i < depth; i++) value = { do: 'several', name: '', edits: [value] }
  return value
}

const MALFORMED: [what: string, name: unknown, args: unknown][] = [
  ['an ask that there is not', 'open-folder', { folder: '/' }],
  ['a name from the prototype', 'constructor', {}],
  ['another', '__proto__', {}],
  ['no name', undefined, undefined],
  ['a name that is an object', { toString: 'look' }, {}],
  ['a name of many lines', 'look\nrefused "edit"\u001b[31m', {}],
  ['a name without end', 'x'.repeat(1_000_000), {}],
  ['arguments that are a text', 'look', 'now'],
  ['arguments that are a list', 'look', []],
  ['more arguments than there are', 'look', { folder: '/etc' }],
  ['a path beside the arguments', 'open-recent', { recent: 'r', folder: '/etc' }],
  ['an argument of another kind', 'undo', { by: 7 }],
  ['an argument left out', 'edit', { by: 'AR' }],
  ['a blank name', 'undo', { by: '   ' }],
  ['an edit that is none', 'edit', { edit: 'add-mark', by: 'AR' }],
  ['an edit that does nothing known', 'edit', { edit: { do: 'delete-everything' }, by: 'AR' }],
  ['an edit with a ring in it', 'edit', { edit: { do: 'describe', set: rings }, by: 'AR' }],
  ['an edit with a number that JSON has not', 'edit', { edit: { do: 'describe', set: { x: 1n } }, by: 'AR' }],
  ['an edit nested deeper than the stack', 'edit', { edit: deep(50_000), by: 'AR' }],
  [
    'a scan that leads out of the job',
    'edit',
    {
      edit: {
        do: 'add-sheet',
        item: {
          id: 'S9',
          title: 'out',
          record: {},
          scan: { file: '../../drum.png', sha256: 'f'.repeat(64), page: 1, width: 1, height: 1 },
        },
      },
      by: 'AR',
    },
  ],
  ['uploads without end', 'new-job', { title: 'T', unit: 'in', by: 'AR', uploads: Array(10_000).fill('x') }],
  ['no uploads', 'new-job', { title: 'T', unit: 'in', by: 'AR', uploads: [] }],
  ['a lock of a job that is not open', 'take-over', { job: 'x', lock: '0'.repeat(24) }],
  ['a lock that is a path', 'take-over', { job: '../..', lock: '../../.lock' }],
  ['a job taken over without its lock', 'take-over', { job: 'x' }],
  ['the history of a list that there is not', 'history', { of: { kind: 'job', id: 'x' }, limit: 5 }],
  ['a history without end', 'history', { of: { kind: 'view', id: 'V1' }, limit: 1e9 }],
  ['the history of nothing', 'history', { of: { kind: 'view', id: '' }, limit: 5 }],
  [
    'a figure in a box without end',
    'read-figure',
    { sheet: 'S1', box: { x: 0, y: 0, width: 1e300, height: 1e300 } },
  ],
  ['a figure in no box', 'read-figure', { sheet: 'S1', box: { x: Number.NaN, y: 0, width: 9, height: 9 } }],
  ['the figures of a sheet that is a path', 'read-sheet', { sheet: '../../S1' }],
  ['the figures of a sheet near nothing', 'read-sheet', { sheet: 'S1', near: { x: 'left', y: 0 } }],
  ['what was read of the prototype', 'readings', { sheet: '__proto__' }],
  ['the hand of a sheet that is a path', 'read-with-hand', { sheet: '../../S1', on: true }],
  ['the labels of a sheet of another job', 'read-labels', { job: '..', sheet: 'S1' }],
  ['a unit that there is not', 'new-job', { title: 'T', unit: 'ell', by: 'AR', uploads: ['x'] }],
]

describe('what no window should ask', () => {
  test('is answered by a sentence each and one line of the log each; the job is as it was, the bench still up', async () => {
    const { bench, ask, refused, log } = await aWorkbench()
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    const before = await folderSnapshot(folder)
    for (const [what, name, args] of MALFORMED) {
      log.length = 0
      const sentence = await refused(name, args)
      expect(sentence, what).toMatch(/^[A-Z].*[.]$/s)
      expect(sentence, what).not.toContain('fault in the program')
      expect(sentence.length, what).toBeLessThan(1000)
      expect(log, what).toHaveLength(1)
      expect(log[0], what).toMatch(/^refused /)
      expect(log[0], what).not.toMatch(/\p{Cc}/u)
      expect(log[0]?.length, what).toBeLessThan(500)
    }
    expect(await folderSnapshot(folder)).toEqual(before)
    await ask('edit', { edit: { do: 'add-mark', item: point('M5', 1, 2) }, by: 'AR' })
  })

  test.each(['open-recent', 'show-sheet', 'stop-pictures', 'add-sheets', 'new-job', 'history'])(
    'a path instead of an id in %s reaches nothing',
    async (name) => {
      const { bench, refused, log } = await aWorkbench()
      const { folder } = await workshopJob()
      await bench.openFolder(folder)
      const before = await folderSnapshot(folder)
      for (const way of [...WAYS_OUT, folder]) {
        const args = {
          'open-recent': { recent: way },
          'show-sheet': { sheet: way },
          'stop-pictures': { sheet: way },
          'add-sheets': { upload: way, by: 'AR' },
          'new-job': { title: 'Pump', unit: 'in', by: 'AR', uploads: [{ upload: way }] },
          history: { of: { kind: 'sheet', id: way }, limit: 5 },
        }[name]
        log.length = 0
        await refused(name, args)
        expect(log).toHaveLength(1)
      }
      expect(await folderSnapshot(folder)).toEqual(before)
    },
  )

  test('a path in the title of a new job stays on the shelf', async () => {
    const { ask, handOver, places } = await aWorkbench()
    const { scan } = await workshopJob()
    const home = join(places.shelf, '..')
    const outside = async (): Promise<string[]> =>
      Object.keys(await folderSnapshot(home)).filter((name) => !/^(?:shelf|settings|temporary)\//.test(name))
    for (const title of WAYS_OUT.map((way) => way.slice(0, 300))) {
      const upload = await handOver(scan)
      const { opened } = await ask('new-job', { title, unit: 'in', by: 'AR', uploads: [{ upload }] })
      expect(opened?.job.title).toBe(title.trim())
      // Several of them come to one name.
      await ask('close-job', {})
      await rm(places.shelf, { recursive: true })
    }
    expect(await outside()).toEqual([])
  })
})

describe('a picture that is asked for', () => {
  test('by any other address than one of an open sheet is not there', async () => {
    const { bench, ask } = await aWorkbench()
    const { folder } = await workshopJob()
    await mkdir(join(folder, '.cache'), { recursive: true })
    await bench.openFolder(folder)
    const { version } = await ask('show-sheet', { sheet: 'S1' })
    const sheet = 'S1'
    expect(await bench.picture(pictureAddress({ sheet, version, kind: 'overview' }))).not.toBeNull()
    const none = [
      '',
      'picture',
      'picture/S1',
      `picture/S1/${version}`,
      `picture/S1/${version}/`,
      `picture/S1/${version}/job.json`,
      `picture/S1/${version}/..%2f..%2f..%2fjob.json`,
      `picture/S1/${version}/overview/../../../../job.json`,
      `picture/S1/${version}/overview.jpg`,
      `picture/S1/${version}/0/0`,
      `picture/S1/${version}/0/0/0/0`,
      `picture/S1/${version}/-1/0/0`,
      `picture/S1/${version}/0/1e3/0`,
      `picture/S1/${version}/0/1/0`,
      `picture/S1/${version}/1/0/0`,
      `picture/S1/${version}/999999/0/0`,
      `picture/S1/%E0%A4%A/overview`,
      `picture/S1/${version.replace(/-1\b/, '-2')}/overview`,
      `picture/S2/${version}/overview`,
      `/picture/S1/${version}/overview`,
      ...WAYS_OUT.flatMap((way) => [
        way,
        pictureAddress({ sheet: way, version, kind: 'overview' }),
        pictureAddress({ sheet, version: way, kind: 'overview' }),
        `picture/S1/${version}/${way}`,
      ]),
    ]
    for (const address of none) expect(await bench.picture(address), address.slice(0, 200)).toBeNull()
    expect(await bench.picture(undefined as unknown as string)).toBeNull()
    await ask('close-job', {})
    expect(await bench.picture(pictureAddress({ sheet, version, kind: 'overview' }))).toBeNull()
  })

  test('through a link that was put among the pictures is not there', async () => {
    const { bench, ask } = await aWorkbench()
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    const { version } = await ask('show-sheet', { sheet: 'S1' })
    const address = pictureAddress({ sheet: 'S1', version, kind: 'thumbnail' })
    const picture = await bench.picture(address)
    expect(picture?.type).toBe('image/jpeg')
    const { readdir, rm, symlink } = await import('node:fs/promises')
    const [pictures = ''] = await readdir(join(folder, '.cache'))
    const thumbnail = join(folder, '.cache', pictures, 'thumbnail.jpg')
    expect(await readFile(thumbnail)).toEqual(picture?.bytes)
    const secret = join(await temporaryFolder(), 'secret')
    await writeFile(secret, 'a secret')
    await rm(thumbnail)
    await symlink(secret, thumbnail)
    expect(await bench.picture(address)).toBeNull()
  })
})
