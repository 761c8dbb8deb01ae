import { expect, test } from 'vitest'
import { readNewEdit } from '../../../src/core/job/edits/edit.ts'
import { openJob } from '../../../src/main/services/job-folder/open-job.ts'
import { seededMint } from '../../core/job/ids/seeded-mint.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

test('what can be undone and made again is called by labels, also after a job was closed', async () => {
  const { folder } = await workshopJob()
  let session = await openJob(folder, { mode: 'write' })
  const mark = { sheet: 'S1', how: 'hand', sigma: 1, kind: 'point', pixel: [10, 20] }
  const added = readNewEdit({ do: 'add-mark', item: mark }, session.job, seededMint(2))
  const id = added.given[0]?.id ?? ''
  await session.edit(added.edit, 'AR')
  await session.edit({ do: 'change-mark', id, set: { sigma: 2 } }, 'AR')
  await session.edit({ do: 'remove-mark', id }, 'AR')

  const names = ['remove point 5', 'change point 5: standard uncertainty of a pick', 'add point 5']
  const undone: (string | undefined)[] = []
  const redone: (string | undefined)[] = []
  for (const _ of names) {
    await session.close()
    session = await openJob(folder, { mode: 'write' })
    undone.push(session.undoName)
    expect((await session.undo('AR')).name).toBe(`undo ${undone.at(-1)}`)
  }
  for (const _ of names) {
    await session.close()
    session = await openJob(folder, { mode: 'write' })
    redone.push(session.redoName)
    expect((await session.redo('AR')).name).toBe(`redo ${redone.at(-1)}`)
  }
  await session.close()
  expect(undone).toEqual(names)
  expect(redone).toEqual(names.toReversed())
})
