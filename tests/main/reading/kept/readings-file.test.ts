import { appendFile, readdir, readFile, utimes, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { FigureReading } from '../../../../src/core/reading/figure-reading.ts'
import { ReadingsFile } from '../../../../src/main/services/reading/kept/readings-file.ts'
import { temporaryFolder } from '../../fixtures/temporary-folder.ts'

const reading = (asRead: string): FigureReading => ({
  box: [1, 2, 3, 4],
  angle: -90,
  text: null,
  asRead,
  value: null,
  kind: null,
  clear: false,
  probability: 0.25,
  alternatives: [{ text: '7', probability: 0.125 }],
  lattice: { slots: [{ alternatives: [{ text: '1', probability: 0.5 }], box: [1, 2, 3, 4] }] },
})

const BOXES = [{ x: 1, y: 2, width: 3, height: 4 }]
const OF = ['a page', 'an engine']

async function aFolder(): Promise<{ folder: string; path: () => Promise<string> }> {
  const folder = join(await temporaryFolder(), 'readings')
  return { folder, path: async () => join(folder, (await readdir(folder))[0] ?? '') }
}

describe('what was read of a page', () => {
  test('is there the next time, and not for another page or engine', async () => {
    const { folder } = await aFolder()
    const file = new ReadingsFile(folder, OF)
    file.keepBoxes(3, BOXES)
    file.keepReading(3, 0, reading('7'))
    await file.end()
    const { boxes, readings } = await new ReadingsFile(folder, OF).read()
    expect([...boxes]).toEqual([[3, BOXES]])
    expect(readings.get(3)?.get(0)).toEqual(reading('7'))
    expect((await new ReadingsFile(folder, ['a page', 'another engine']).read()).boxes.size).toBe(0)
  })

  test('but for a line that was torn, and what is written after goes on', async () => {
    const { folder, path } = await aFolder()
    const file = new ReadingsFile(folder, OF)
    file.keepBoxes(0, BOXES)
    await file.end()
    await appendFile(await path(), '{"part":0,"box":0,"read')
    const again = new ReadingsFile(folder, OF)
    expect((await again.read()).boxes.size).toBe(1)
    again.keepReading(0, 0, reading('8'))
    await again.end()
    expect((await readFile(await path(), 'utf8')).trim().split('\n')).toHaveLength(2)
    expect((await new ReadingsFile(folder, OF).read()).readings.get(0)?.get(0)).toEqual(reading('8'))
  })

  test('is nothing where the file holds something else', async () => {
    const { folder, path } = await aFolder()
    const file = new ReadingsFile(folder, OF)
    file.keepBoxes(0, BOXES)
    await file.end()
    await writeFile(await path(), '{"part":-1,"boxes":"all"}\n[1]\n')
    const { boxes, readings } = await new ReadingsFile(folder, OF).read()
    expect([boxes.size, readings.size]).toEqual([0, 0])
  })

  test('makes room for what is read now: of 200 pages the one that was asked for longest ago goes', async () => {
    const { folder } = await aFolder()
    const first = new ReadingsFile(folder, OF)
    first.keepBoxes(0, BOXES)
    await first.end()
    for (let i = 1; i < 200; i++) {
      const path = join(folder, `${i}.ndjson`)
      await writeFile(path, '')
      await utimes(path, i, i)
    }
    const last = new ReadingsFile(folder, ['another page'])
    last.keepBoxes(0, BOXES)
    await last.end()
    const names = await readdir(folder)
    expect(names).toHaveLength(200)
    expect(names).not.toContain('1.ndjson')
    expect(names).toContain('2.ndjson')
  })
})
