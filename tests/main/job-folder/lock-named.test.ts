import { rename, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { acquireLock, stillHeld } from '../../../src/main/services/job-folder/lock/acquire-lock.ts'
import { thisHolder, writeHolder } from '../../../src/main/services/job-folder/lock/lock-holder.ts'
import { lookAtLock } from '../../../src/main/services/job-folder/lock/look-at-lock.ts'
import { nameHolder } from '../../../src/main/services/job-folder/lock/name-holder.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'

const NOW = new Date('2026-03-01T08:00:00.000Z')

test('a lock says who is at work, a longer name and a shorter one, and is still the same hold', async () => {
  const path = join(await temporaryFolder(), '.lock')
  const holder = thisHolder(NOW, undefined, 'A. Rivet')
  await acquireLock(path, holder)
  for (const person of ['Bartholomew Brass of the upper foundry', 'C.', 'Ö. Drum']) {
    await nameHolder(path, { ...holder, person })
    expect(await lookAtLock(path)).toEqual({
      kind: 'held',
      token: holder.token,
      holder: { ...holder, person },
    })
    expect(await stillHeld(path, holder)).toBe(true)
  }
})

test('a lock that is somebody else’s by now is not named', async () => {
  const path = join(await temporaryFolder(), '.lock')
  const [mine, theirs] = [thisHolder(NOW), thisHolder(NOW)]
  await acquireLock(path, mine)
  await writeFile(`${path}.claim`, writeHolder(theirs))
  await rename(`${path}.claim`, path)
  await nameHolder(path, { ...mine, person: 'A. Rivet' })
  expect(await lookAtLock(path)).toEqual({ kind: 'held', token: theirs.token, holder: theirs })
})
