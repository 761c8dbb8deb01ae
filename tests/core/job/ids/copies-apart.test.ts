import fc from 'fast-check'
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { expect, it } from 'vitest'
import { addPerson, applyEdit, readNewEdit } from '../../../../src/core/job/edits/edit.ts'
import { mintedFor } from '../../../../src/core/job/ids/id-form.ts'
import { newIdentity } from '../../../../src/core/job/ids/new-identity.ts'
import type { Job } from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { drumJob } from '../../../main/fixtures/workshop-job.ts'
import { type Chance, idsSince, oneOf, WAYS_BY_HAND, WAYS_OF_A_WINDOW } from './additions.ts'
import { seededMint } from './seeded-mint.ts'

const EDITS = 500

const scan = { file: 'drum.png', sha256: '7'.repeat(64), page: 1, width: 400, height: 300, dpi: 300 }
const drum = readJob(drumJob(scan))

/** A job after so many additions, in ways that chance decides. */
function addedTo(job: Job, seed: number): Job {
  const random = xoroshiro128plus(seed)
  const chance: Chance = (below) => uniformInt(random, 0, below - 1)
  // As if each copy's machine had chance of its own.
  const mint = seededMint(chance(2 ** 31))
  let now = job
  for (let n = 0; n < EDITS; n++) {
    const way = chance(WAYS_OF_A_WINDOW.length + WAYS_BY_HAND.length + 2)
    const ofWindow = WAYS_OF_A_WINDOW[way]
    const byHand = WAYS_BY_HAND[way - WAYS_OF_A_WINDOW.length]
    const edit =
      ofWindow !== undefined
        ? ofWindow(now, mint, chance)
        : byHand !== undefined
          ? readNewEdit(byHand(now, chance), now, mint).edit
          : way % 2 === 0
            ? addPerson(now, `Somebody ${n} of ${seed}`, mint).edit
            : {
                do: 'add-sheet' as const,
                item: {
                  ...newIdentity('sheet', now.sheets, mint),
                  title: 'Another',
                  record: {},
                  scan: oneOf(now.sheets, chance).scan,
                },
              }
    now = applyEdit(now, edit).job
  }
  return now
}

it('Two copies of a job, added to 500 times each in every way there is, share no new id, and both are sound', () => {
  const seed = fc.integer({ min: 1, max: 2 ** 31 - 1 })
  fc.assert(
    fc.property(seed, seed, (one, another) => {
      fc.pre(one !== another)
      const copies = [addedTo(drum, one), addedTo(drum, another)]
      const [first, second] = copies.map((job) => idsSince(drum, job))
      if (first === undefined || second === undefined) throw new Error('two copies')
      expect([...first].filter((id) => second.has(id))).toEqual([])
      for (const ids of [first, second]) {
        expect(ids.size).toBeGreaterThan(EDITS)
        expect([...ids].filter((id) => mintedFor(id) === undefined)).toEqual([])
      }
      for (const job of copies) expect(readJob(JSON.parse(JSON.stringify(job)))).toEqual(job)
    }),
    { numRuns: 3, endOnFailure: true },
  )
})
