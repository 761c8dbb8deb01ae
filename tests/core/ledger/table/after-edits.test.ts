import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyEdit, readEdit } from '../../../../src/core/job/edits/edit.ts'
import type { Job } from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { dimensionTable } from '../../../../src/core/ledger/table/dimension-table.ts'
import type { Table } from '../../../../src/core/ledger/table/table.ts'
import { randomStream } from '../../../../src/core/uncertainty/random.ts'
import { ScantlingError } from '../../../../src/core/words/scantling-error.ts'
import { anyJob, type Draw, oneOf, some, sometimes } from '../../job/arbitrary-job.ts'
import { roughEdit } from '../../job/edits/rough-edit.ts'
import { winchJob } from '../../job/winch-job.ts'
import { ACROSS, ALONG, ONE_KNOWN, stretchedJob, WELL_KNOWN } from '../stretched-sheet.ts'
import { withMintedIds } from './minted-ids.ts'
import { differsAt } from './same-bits.ts'
import { sharingJob } from './sharing-job.ts'

/** Views of one sheet that tell one another how it is stretched. */
function sharedStretch(seed: number): Job {
  const more = { ...WELL_KNOWN, known: [ALONG, ACROSS], at: [6000, 1000], scale: 8 } as const
  const views =
    seed % 2 === 0 ? [WELL_KNOWN, ONE_KNOWN, more] : [ONE_KNOWN, { ...more, mapping: 'uniform' as const }]
  return stretchedJob({ stretch: 0.008, draughting: 0.13, views }, randomStream(seed))
}

function startFor(draw: Draw): Job {
  const kind = some(draw, 5)
  if (kind === 0) return readJob(anyJob(draw))
  if (kind === 1) return readJob(winchJob())
  if (kind === 2) return sharedStretch(some(draw, 1000))
  const relations = ['d1 + d2 = d3', 'd4 = 2 * d5', 'd7 = d8'].map((text, i) => ({ id: `Q${i + 1}`, text }))
  const job: Job = { ...sharingJob(some(draw, 1000)), relations }
  return sometimes(draw) ? withMintedIds(job, kind) : job
}

/** The job after some edit; null where that is refused. */
function edited(draw: Draw, job: Job, fresh: string): Job | null {
  try {
    return applyEdit(job, readEdit(JSON.parse(JSON.stringify(roughEdit(draw, job, fresh))))).job
  } catch (error) {
    if (error instanceof ScantlingError) return null
    throw error
  }
}

interface Step {
  job: Job
  table: Table
}

describe('a table after edits', () => {
  const seen = { edits: 0, kept: 0, rows: 0, uncertain: 0, fitted: 0, related: 0 }

  it('is to the last bit what it is when all is worked out anew', () => {
    fc.assert(
      fc.property(fc.gen(), (draw) => {
        const job = startFor(draw)
        const steps: Step[] = [{ job, table: dimensionTable(job) }]
        for (let i = 0; i < 22; i++) {
          // Mostly the newest; at times one that others were made from already, as a trial has it.
          const { job, table } = (some(draw, 5) > 0 ? steps.at(-1) : oneOf(draw, steps)) as Step
          const after = edited(draw, job, `x${i}`)
          if (after === null) continue
          const now = dimensionTable(after, { before: table })
          expect(differsAt(now, dimensionTable(after))).toBeNull()
          count(now, table)
          steps.push({ job: after, table: now })
        }
      }),
      { numRuns: 100 },
    )
    // Enough edits, most rows left alone by them and yet uncertain, views fitted to more than they need, relations closed.
    expect(seen.edits).toBeGreaterThanOrEqual(1000)
    expect(seen.kept / seen.rows).toBeGreaterThan(0.5)
    expect(seen.uncertain / seen.rows).toBeGreaterThan(0.5)
    expect(seen.fitted).toBeGreaterThan(300)
    expect(seen.related).toBeGreaterThan(1000)
  })

  function count(now: Table, was: Table): void {
    const before = new Set(was.rows)
    seen.edits++
    seen.rows += now.rows.length
    seen.kept += now.rows.filter((row) => before.has(row)).length
    seen.uncertain += now.rows.filter(({ u }) => u > 0).length
    seen.fitted += now.views.filter(({ dof }) => dof > 0).length
    seen.related += now.relations.filter(({ problem }) => problem === undefined).length
  }
})
