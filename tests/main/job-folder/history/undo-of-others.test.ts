import { expect, test } from 'vitest'
import { markIds, pick, withJob } from '../../fixtures/history-folder.ts'
import { workshopJob } from '../../fixtures/workshop-job.ts'

test('what somebody else did since is not undone by accident: it is said whose it is and when', async () => {
  const { folder } = await workshopJob((job) => ({
    ...job,
    people: [...job.people, { id: 'BB', name: 'B. Brass' }],
  }))
  await withJob(folder, async (session) => session.edit(pick('mine'), 'AR'))
  await withJob(folder, async (session) => session.edit(pick('theirs'), 'b. brass'))
  await withJob(folder, async (session) => {
    expect(session.undoes).toMatchObject({ name: 'add mark theirs', by: 'BB' })
    await expect(session.undo('A. Rivet')).rejects.toThrow(
      /^"add mark theirs" was made by B\. Brass \(\d+ \w+ \d{4}, \d\d:\d\d\), not by you, so it is not undone by accident/,
    )
    expect(markIds(session.job).slice(4)).toEqual(['mine', 'theirs'])
    await session.undo('A. Rivet', true)
    await session.undo('A. Rivet')
    expect(markIds(session.job).slice(4)).toEqual([])
    // What A. Rivet undid is theirs to make again, whoever made it first.
    await expect(session.redo('BB')).rejects.toThrow('"add mark mine" was made by A. Rivet')
    await session.redo('AR')
    expect(markIds(session.job).slice(4)).toEqual(['mine'])
  })
})

test('undo goes back over closings, one edit after another, to where the history begins', async () => {
  const { folder, job } = await workshopJob()
  for (let i = 0; i < 6; i++) {
    await withJob(folder, async (session) => {
      await session.edit(pick(`a${i}`), 'AR')
      await session.edit(pick(`b${i}`), 'AR')
      await session.undo('AR')
    })
  }
  for (let i = 5; i >= 0; i--) {
    await withJob(folder, async (session) => {
      expect(session.undoName).toBe(`add mark a${i}`)
      await session.undo('AR')
    })
  }
  await withJob(folder, async (session) => {
    expect(session.undoName).toBeUndefined()
    expect({ ...session.job, edition: 0 }).toEqual({ ...job, edition: 0 })
    for (let i = 0; i < 6; i++) await session.redo('AR')
    expect(session.redoName).toBe('add mark b5')
    expect(markIds(session.job).slice(4)).toEqual(['a0', 'a1', 'a2', 'a3', 'a4', 'a5'])
  })
})
