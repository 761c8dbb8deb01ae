import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isSeenSound } from '../../../../src/core/job/checks/seen-sound.ts'
import { firstUse, problemOfUse } from '../../../../src/core/job/checks/uses.ts'
import { checkEdited } from '../../../../src/core/job/edits/apply/apply-edit.ts'
import { makeEdit } from '../../../../src/core/job/edits/apply/make-edit.ts'
import { WorkingCopy } from '../../../../src/core/job/edits/apply/working-copy.ts'
import { type Applied, applyEdit, type Edit, EditRun, readEdit } from '../../../../src/core/job/edits/edit.ts'
import { indexOf } from '../../../../src/core/job/lookup/index-of.ts'
import type { NamedAs } from '../../../../src/core/job/lookup/mentions.ts'
import { ITEM_KINDS, ITEM_WORDS, nameOf } from '../../../../src/core/job/model/item-kinds.ts'
import { jobSchema } from '../../../../src/core/job/model/schema.ts'
import type { Job } from '../../../../src/core/job/model/types.ts'
import { walkMeanings } from '../../../../src/core/job/model/walk-meanings.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { JobError } from '../../../../src/core/job/text/job-error.ts'
import { anyJob, type Draw, oneOf, some, sometimes } from '../arbitrary-job.ts'
import { expectSame } from '../expect-same.ts'
import { winchJob } from '../winch-job.ts'
import { roughEdit } from './rough-edit.ts'

/** What an edit comes to: the job after it and its inverse, or why it is refused. */
type Verdict = { readonly made: Applied } | { readonly refused: JobError['reason'] }

function verdict(apply: () => Applied): Verdict {
  try {
    return { made: apply() }
  } catch (error) {
    if (error instanceof JobError) return { refused: error.reason }
    throw error
  }
}

/** The same job in lists of its own, of which nothing is known yet. */
const afresh = (job: Job): Job => structuredClone(job)

/** The edit made on a job that nothing is known of, and the job after it looked through from end to end. */
function wholly(job: Job, edit: Edit, copy: WorkingCopy): Verdict {
  return verdict(() => {
    const inverse = makeEdit(copy, edit)
    const after = copy.job()
    checkEdited(job, edit, after)
    return { job: after, inverse }
  })
}

function readable(edit: Edit): Edit | undefined {
  try {
    return readEdit(JSON.parse(JSON.stringify(edit)))
  } catch {
    return undefined
  }
}

/** What a reason is about, down to the reason inside it. */
const codeOf = ({ code, parts }: JobError['reason']): string => {
  const { problem } = parts as { problem?: JobError['reason'] }
  return problem === undefined ? code : problem.code
}

const startFor = (draw: Draw): Job => readJob(sometimes(draw) ? winchJob() : anyJob(draw))

const AS: readonly NamedAs[] = [...ITEM_WORDS, 'in a formula', 'subject']

/** What is known of the lists of a job: who is there, and who names what. */
function knownOf(job: Job): unknown {
  return ITEM_WORDS.map((kind) => {
    const { list, key } = ITEM_KINDS[kind]
    const index = indexOf(job, kind)
    const items: readonly object[] = job[list]
    const byName = items.map((item) => {
      const name = nameOf(item, key)
      return [name, index.get(name) === item, index.placeIn(job[list] as never, name)]
    })
    const naming = AS.flatMap((as) =>
      [...index.holders.named(as)].map((name) => {
        const holders = [...index.holders.of(as, name)].map((item) => nameOf(item, key)).sort()
        return `${as} ${name}: ${holders.join()}`
      }),
    )
    return { kind, size: index.size, byName, naming: naming.sort() }
  })
}

describe('an edit', () => {
  const seen = { made: 0, meansTheSame: 0, wholly: 0 }
  const reasons = new Map<string, number>()

  it('comes to what it comes to when the whole job is looked through after it, refusals and all', () => {
    fc.assert(
      fc.property(fc.gen(), (draw) => {
        const jobs = [startFor(draw)]
        for (let i = 0; i < 14; i++) {
          // Mostly the newest job, as in a session; at times one that has handed its lists on already.
          const job = (some(draw, 5) > 0 ? jobs.at(-1) : oneOf(draw, jobs)) as Job
          const edit = readable(roughEdit(draw, job, `x${i}`))
          if (edit === undefined) continue
          const quick = verdict(() => applyEdit(job, edit))
          const copy = new WorkingCopy(afresh(job))
          expectSame(quick, wholly(job, edit, copy))
          if ('refused' in quick)
            reasons.set(codeOf(quick.refused), (reasons.get(codeOf(quick.refused)) ?? 0) + 1)
          else {
            seen.made++
            const { before, after } = copy.change()
            if (before.unit === after.unit && before.gauge === after.gauge) {
              seen.meansTheSame++
              if (!isSeenSound(copy.change())) seen.wholly++
            }
            jobs.push(quick.made.job)
          }
        }
      }),
      { numRuns: 300 },
    )
  })

  it('was drawn so that it was refused for reasons of every sort', () => {
    expect([...reasons.keys()]).toEqual(
      expect.arrayContaining([
        'edit.no-such-item',
        'edit.item-there-already',
        'edit.not-withdrawn',
        'formula.circle-to-break',
        'formula.no-such-name',
        'formula.stopped',
        'job.adopts-nothing',
        'job.bare-quantities',
        'job.id-is-a-rule',
        'job.in-use',
        'job.kinds-of-marks',
        'job.mark-on-another-sheet',
        'job.name-reserved',
        'job.nested-too-deep',
        'job.no-name-for-formulas',
        'job.no-such-item',
        'job.not-among-people',
        'job.number-of-marks',
        'job.stands-twice',
        'job.too-few-corners',
        'notation.stopped',
      ]),
    )
  })

  it('was seen to be sound by what it touched, where it was made and bare numbers mean what they did', () => {
    expect(seen.made).toBeGreaterThan(1000)
    expect(seen.wholly / seen.meansTheSame).toBeLessThan(0.01)
  })
})

describe('several edits as one', () => {
  it('come to the same as one after the other', () => {
    fc.assert(
      fc.property(fc.gen(), (draw) => {
        const job = startFor(draw)
        const edit = readable(roughEdit(draw, job, 'x'))
        if (edit?.do !== 'several') return
        const together = verdict(() => {
          const copy = new WorkingCopy(job)
          return { inverse: makeEdit(copy, edit), job: copy.job() }
        })
        const apart = verdict(() => {
          let next = job
          const edits = edit.edits.map((one) => {
            const copy = new WorkingCopy(afresh(next))
            const back = makeEdit(copy, one)
            next = copy.job()
            return back
          })
          return { job: next, inverse: { do: 'several', name: edit.name, edits: edits.reverse() } }
        })
        expectSame(together, apart)
      }),
      { numRuns: 600 },
    )
  })
})

describe('edits in a row', () => {
  it('come to the same as one by one, refusals and all, and leave the job that they began with', () => {
    fc.assert(
      fc.property(fc.gen(), (draw) => {
        const first = startFor(draw)
        const [before, run] = [afresh(first), new EditRun(first)]
        let job = first
        for (let i = 0; i < 14; i++) {
          const edit = readable(roughEdit(draw, job, `x${i}`))
          if (edit === undefined) continue
          const one = verdict(() => applyEdit(job, edit))
          const inRow = verdict(() => ({ inverse: run.make(edit), job: run.job }))
          expectSame(inRow, one)
          if ('refused' in one) break
          job = one.made.job
        }
        expectSame(first, before)
      }),
      { numRuns: 300 },
    )
  })

  it('leave known of the lists of a job what is found by going through them', () => {
    fc.assert(
      fc.property(fc.gen(), (draw) => {
        const run = new EditRun(startFor(draw))
        for (let i = 0; i < 10; i++) {
          if (sometimes(draw)) knownOf(run.job)
          const edit = readable(roughEdit(draw, run.job, `x${i}`))
          // Whether it is refused is tried on a copy, for a run ends with a refusal.
          if (edit === undefined || 'refused' in verdict(() => applyEdit(afresh(run.job), edit))) continue
          run.make(edit)
          expectSame(knownOf(run.job), knownOf(afresh(run.job)))
        }
      }),
      { numRuns: 150 },
    )
  })
})

describe('renaming a dimension', () => {
  const MENTIONS = walkMeanings(jobSchema, 'formula', 'subject', 'reference')

  it('names it anew wherever the schema says that a dimension is named', () => {
    fc.assert(
      fc.property(fc.gen(), (draw) => {
        const job = startFor(draw)
        const from = oneOf(draw, job.dimensions)?.name
        if (from === undefined) return
        const to = `other_${from}`
        const { job: after } = applyEdit(job, { do: 'rename-dimension', name: from, to })
        const left: string[] = []
        MENTIONS.each(after, (text) => {
          if (text.split(/\W+/).includes(from)) left.push(text)
        })
        expect(left).toEqual([])
        expect(JSON.parse(JSON.stringify(after).replaceAll(to, from))).toEqual(
          JSON.parse(JSON.stringify(job)),
        )
      }),
      { numRuns: 200 },
    )
  })
})

describe('what is known of the lists of a job', () => {
  it('is after any edits, made, dropped or taken back, what is found by going through them', () => {
    fc.assert(
      fc.property(fc.gen(), (draw) => {
        let job = startFor(draw)
        for (let i = 0; i < 12; i++) {
          // Who names what is worked out when it is asked for, before or after.
          if (sometimes(draw)) knownOf(job)
          const edit = readable(roughEdit(draw, job, `x${i}`))
          if (edit === undefined) continue
          const quick = verdict(() => applyEdit(job, edit))
          if ('refused' in quick || some(draw, 3) === 0) continue
          job = sometimes(draw) ? quick.made.job : applyEdit(quick.made.job, quick.made.inverse).job
          expectSame(knownOf(job), knownOf(afresh(job)))
        }
      }),
      { numRuns: 200 },
    )
  })

  it('tells what uses an item exactly when going through the whole job does', () => {
    fc.assert(
      fc.property(fc.gen(), (draw) => {
        const job = startFor(draw)
        for (const kind of ITEM_WORDS) {
          const { list, key } = ITEM_KINDS[kind]
          for (const item of job[list]) {
            const name = nameOf(item, key)
            expect(problemOfUse(job, kind, name)).toEqual(firstUse(job, kind, name))
          }
        }
      }),
      { numRuns: 100 },
    )
  })
})
