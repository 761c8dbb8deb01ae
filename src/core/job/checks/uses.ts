import { standsIn } from '../../formula/rename-in-formula.ts'
import type { ItemKind } from '../edits/edit-types.ts'
import type { Evidence, Job } from '../model/types.ts'
import { quoted } from '../text/quoted.ts'

/** Something that refers to an item, in words, and what can be done about it. */
interface Use {
  by: string
  first: 'remove or change' | 'change' | 'withdraw or change'
}

const inList = (word: string, id: string): Use => ({ by: `${word} ${quoted(id)}`, first: 'remove or change' })

function inReference(job: Job, mark: string): Use | undefined {
  for (const view of job.views) {
    const found = view.references.find(({ marks }) => (marks as string[]).includes(mark))
    if (found !== undefined) {
      return { by: `reference ${quoted(found.id)} of view ${quoted(view.id)}`, first: 'remove or change' }
    }
  }
  return undefined
}

function inEvidence(
  job: Job,
  uses: (evidence: Evidence) => boolean,
  first: Use['first'] = 'change',
): Use | undefined {
  for (const { name, evidence } of job.dimensions) {
    const found = evidence.find(uses)
    if (found !== undefined) return { by: `evidence ${quoted(found.id)} of dimension ${quoted(name)}`, first }
  }
  return undefined
}

function inItems<T extends { id: string }>(
  word: ItemKind,
  items: readonly T[],
  uses: (item: T) => boolean,
): Use | undefined {
  const found = items.find(uses)
  return found === undefined ? undefined : inList(word, found.id)
}

function firstUse(job: Job, kind: ItemKind, name: string): Use | undefined {
  switch (kind) {
    case 'mark':
      return inReference(job, name) ?? inEvidence(job, (e) => e.basis === 'scaled' && e.marks.includes(name))
    case 'view':
      return inEvidence(job, (e) => e.basis === 'scaled' && e.view === name)
    case 'sheet': {
      const on = ({ sheet }: { sheet: string }): boolean => sheet === name
      return (
        inItems('view', job.views, on) ??
        inItems('mark', job.marks, on) ??
        inItems('note', job.notes, on) ??
        inEvidence(job, (e) => e.basis === 'printed' && e.sheet === name)
      )
    }
    case 'person': {
      const of = ({ by }: { by?: string }): boolean => by === name
      return inItems('mark', job.marks, of) ?? inEvidence(job, of) ?? inItems('note', job.notes, of)
    }
    case 'instrument':
      return inEvidence(job, (e) => e.basis === 'found' && e.instrument === name)
    case 'dimension': {
      const inFormula = (e: Evidence): boolean =>
        e.basis === 'derived' && e.withdrawn === undefined && standsIn(e.formula, name)
      return (
        inEvidence(job, inFormula, 'withdraw or change') ??
        inItems('relation', job.relations, ({ text }) => standsIn(text, name))
      )
    }
    default:
      return undefined
  }
}

/** Why an item can't be removed while something refers to it, in a sentence; null when nothing does. */
export function problemOfUse(job: Job, kind: ItemKind, name: string): string | null {
  const use = firstUse(job, kind, name)
  if (use === undefined) return null
  const word = kind.charAt(0).toUpperCase() + kind.slice(1)
  return `${word} ${quoted(name)} is used by ${use.by}: ${use.first} that first.`
}
