import { renameInFormula, standsIn } from '../../formula/rename-in-formula.ts'
import type { Dimension, Evidence, Job, Note, Relation } from '../model/types.ts'
import { JobError } from '../text/job-error.ts'
import { quoted } from '../text/quoted.ts'

const isIn = (evidence: Evidence, name: string): boolean =>
  evidence.basis === 'derived' && standsIn(evidence.formula, name)

function renameEvidence(evidence: Evidence, from: string, to: string): Evidence {
  if (evidence.basis !== 'derived' || !isIn(evidence, from)) return evidence
  return { ...evidence, formula: renameInFormula(evidence.formula, from, to) }
}

/**
 * A job with a dimension renamed, in formulas, relations and what notes are about as well; and the notes that were
 * about the new name already.
 *
 * @throws JobError when there is no such dimension, or the new name is in use
 */
export function renameDimension(job: Job, from: string, to: string): { job: Job; already: Note[] } {
  if (!job.dimensions.some(({ name }) => name === from)) {
    throw new JobError(`There is no dimension ${quoted(from)}: it may have been renamed.`)
  }
  if (from === to) return { job, already: [] }
  if (job.dimensions.some(({ name }) => name === to)) {
    throw new JobError(`There is a dimension ${quoted(to)} already: give this one another name.`)
  }
  const user = job.dimensions.find(({ evidence }) => evidence.some((one) => isIn(one, to)))
  if (user !== undefined || job.relations.some(({ text }) => standsIn(text, to))) {
    const where = user === undefined ? 'A relation' : `A formula of dimension ${quoted(user.name)}`
    throw new JobError(`${where} means something else by ${quoted(to)} already: give another name.`)
  }
  const dimension = (item: Dimension): Dimension => {
    const evidence = item.evidence.map((one) => renameEvidence(one, from, to))
    const name = item.name === from ? to : item.name
    const same = name === item.name && evidence.every((one, i) => one === item.evidence[i])
    return same ? item : { ...item, name, evidence }
  }
  const relation = (item: Relation): Relation =>
    standsIn(item.text, from) ? { ...item, text: renameInFormula(item.text, from, to) } : item
  const note = (item: Note): Note => (item.about === from ? { ...item, about: to } : item)
  return {
    job: {
      ...job,
      dimensions: job.dimensions.map(dimension),
      relations: job.relations.map(relation),
      notes: job.notes.map(note),
    },
    already: job.notes.filter(({ about }) => about === to),
  }
}
