import { readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { aWorkbench } from '../fixtures/a-workbench.ts'
import { point } from '../fixtures/picked-point.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

const pick = (id: string) => ({ do: 'add-mark' as const, item: point(id, 10, 20) })

/** A job whose document was changed by hand after its last edit. */
async function changedByHand() {
  const { folder } = await workshopJob()
  const under = await aWorkbench()
  await under.bench.openFolder(folder)
  await under.ask('edit', { edit: pick('M5'), by: 'AR' })
  await under.ask('close-job', {})
  const path = join(folder, 'job.json')
  await writeFile(path, (await readFile(path, 'utf8')).replace('Drum of the chain ferry', 'Drum by hand'))
  return { ...under, folder }
}

test('a job whose files do not belong together says so, what it can go on from, and goes on from either', async () => {
  for (const [from, title] of [
    ['job', 'Drum by hand'],
    ['history', 'Drum of the chain ferry'],
  ] as const) {
    const { bench, ask, folder } = await changedByHand()
    const { opened } = await bench.openFolder(folder)
    expect(opened).toMatchObject({ writable: false, damaged: true })
    const job = opened?.id ?? ''
    const damage = await ask('look-at-damage', { job })
    expect(damage.trouble).toContain('was changed by hand')
    expect(damage.offers.map((offer) => offer.from)).toEqual(['job', 'history'])
    expect(damage.offers[0]?.holds).toMatch(/^job\.json: "Drum by hand" as of edit 1, /)
    const mended = await ask('mend', { job, from, by: 'AR' })
    expect(mended.opened).toMatchObject({ writable: true, job: { title } })
    expect(mended.opened?.damaged).toBeUndefined()
    expect(
      mended.opened?.notices.some((one) => one.startsWith('The job was mended and goes on from edit')),
    ).toBe(true)
    expect(
      (await readdir(join(folder, 'set-aside'))).some((name) => name.startsWith('before-mending-')),
    ).toBe(true)
    expect(await ask('look-at-damage', { job })).toEqual({ trouble: null, offers: [] })
    await ask('edit', { edit: pick('M6'), by: 'AR' })
  }
})

test('a sound job has nothing to mend, and what is not offered is refused with the job as it was', async () => {
  const { bench, ask, refused, folder } = await changedByHand()
  const { opened } = await bench.openFolder(folder)
  const before = await readFile(join(folder, 'job.json'), 'utf8')
  expect(await refused('mend', { job: opened?.id ?? '', from: 'rescued', by: 'AR' })).toMatch(/\.$/)
  expect(await readFile(join(folder, 'job.json'), 'utf8')).toBe(before)
  const sound = await bench.openFolder((await workshopJob()).folder)
  expect(sound.opened?.damaged).toBeUndefined()
  expect(await ask('look-at-damage', { job: sound.opened?.id ?? '' })).toEqual({ trouble: null, offers: [] })
  expect(await refused('look-at-damage', { job: '/etc' })).toContain('not on the list')
})
