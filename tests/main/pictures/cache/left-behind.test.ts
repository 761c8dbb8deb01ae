import { spawnSync } from 'node:child_process'
import { mkdir, readdir, symlink, utimes, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { Sheet } from '../../../../src/core/job/model/types.ts'
import { dropStrange } from '../../../../src/main/services/pictures/cache/drop-strange.ts'
import { halfMade, ownMark, removeHalfMade } from '../../../../src/main/services/pictures/cache/half-made.ts'
import { pictureFolderName } from '../../../../src/main/services/pictures/layout/picture-names.ts'
import { temporaryFolder } from '../../fixtures/temporary-folder.ts'

const [machine = '', , run = ''] = ownMark().split('-')

/** The number of a process that has ended. */
const ended = (): number => spawnSync(process.execPath, ['--version']).pid

describe('what is left half-made', () => {
  test('by a process of this machine that has ended goes; what others may still be making stays', async () => {
    const folder = await temporaryFolder()
    const stays = [
      halfMade('tiles'),
      `tiles.${machine}-${process.ppid}-${run}-0123456789abcdef.tmp`,
      `tiles.00000000-${ended()}-${run}-0123456789abcdef.tmp`,
      'overview.jpg.0123456789abcdef.tmp',
      'tiles',
    ]
    const goes = [
      `tiles.${machine}-${ended()}-${run}-0123456789abcdef.tmp`,
      `overview.jpg.${machine}-${ended()}-${run}-01234567.tmp`,
      // The number of this process, which another one had before it.
      `early.${machine}-${process.pid}-00000000-0123456789abcdef.tmp`,
    ]
    for (const name of [...stays, ...goes]) await mkdir(join(folder, name))
    await removeHalfMade(folder)
    expect((await readdir(folder)).sort()).toEqual([...stays].sort())
  })

  test('anywhere goes after a week', async () => {
    const folder = await temporaryFolder()
    const names = ['tiles.00000000-1-00000000-00.tmp', 'ground.png.0123456789abcdef.tmp']
    for (const name of names) await writeFile(join(folder, name), '')
    const [old] = names
    const longAgo = new Date(Date.now() - 8 * 24 * 3600 * 1000)
    await utimes(join(folder, old ?? ''), longAgo, longAgo)
    await removeHalfMade(folder)
    expect(await readdir(folder)).toEqual(names.slice(1))
  })
})

const SCAN = { file: 'a.tif', sha256: '12'.repeat(32), page: 1, width: 10, height: 10 }
const sheet = (scan: Sheet['scan']): Sheet => ({ id: 'S1', title: '', record: {}, scan })

describe('pictures of scans that a job has no more', () => {
  test('are removed, and those of another make, page or resolution; nothing else is', async () => {
    const job = await temporaryFolder()
    const own = [pictureFolderName(SCAN), pictureFolderName({ ...SCAN, page: 3, drawnAt: 400 })]
    const strange = [
      pictureFolderName({ ...SCAN, sha256: '34'.repeat(32) }),
      pictureFolderName({ ...SCAN, page: 2 }),
      pictureFolderName({ ...SCAN, page: 3, drawnAt: 300.5 }),
      '1212121212121212-p1-v1',
    ]
    const others = ['notes', '1212-p1-v1', `${own[0]}-copy`]
    for (const name of [...own, ...strange, ...others]) {
      await mkdir(join(job, '.cache', name, 'tiles'), { recursive: true })
    }
    await dropStrange(job, [sheet(SCAN), sheet({ ...SCAN, page: 3, drawnAt: 400 })])
    expect((await readdir(join(job, '.cache'))).sort()).toEqual([...own, ...others].sort())
  })

  test('are not looked for where a link leads', async () => {
    const [job, elsewhere] = [await temporaryFolder(), await temporaryFolder()]
    const name = '3434343434343434-p1-v1'
    await mkdir(join(elsewhere, name))
    await mkdir(join(job, '.cache'))
    await symlink(join(elsewhere, name), join(job, '.cache', name))
    await dropStrange(job, [sheet(SCAN)])
    expect(await readdir(elsewhere)).toEqual([name])

    const linked = await temporaryFolder()
    await symlink(elsewhere, join(linked, '.cache'))
    await dropStrange(linked, [sheet(SCAN)])
    expect(await readdir(elsewhere)).toEqual([name])
  })

  test('in a job that has none do no harm', async () => {
    await expect(dropStrange(await temporaryFolder(), [sheet(SCAN)])).resolves.toBeUndefined()
  })
})
