import type { Job, View } from '../../core/job/model/types.ts'
import type { Selection } from '../bench/selection.ts'
import type { Shows } from '../bench/shows.ts'
import { extent } from '../camera/camera.ts'
import type { Item } from './items.ts'

interface Shown {
  job: Job
  shows: Shows
  /** The view at work, by its id; null when the sheet has none. */
  view: string | null
}

/** Those of the things over a sheet that a person wants to see there. */
export function onlyShown(items: Item[], { job, shows, view: id }: Shown): Item[] {
  switch (shows) {
    case 'all':
      return items
    case 'none':
      return []
    case 'chosen':
      return items.filter(({ chosen }) => chosen)
    case 'view': {
      const view = job.views.find((one) => one.id === id)
      const marks = view === undefined ? new Set<string>() : marksOf(job, view)
      return items.filter((item) => item.chosen || (view !== undefined && isOf(item, view, marks)))
    }
  }
}

/** The marks that the sizes of a view are taken from. */
function marksOf(job: Job, view: View): Set<string> {
  const ofSizes = view.references.flatMap(({ marks }): readonly string[] => marks)
  const ofDimensions = job.dimensions.flatMap(({ evidence }) =>
    evidence.flatMap((piece): readonly string[] =>
      piece.basis === 'scaled' && piece.view === view.id ? piece.marks : [],
    ),
  )
  return new Set([...ofSizes, ...ofDimensions])
}

function isOf(item: Item, view: View, marks: ReadonlySet<string>): boolean {
  const about: Selection = item.about
  switch (about.kind) {
    case 'view':
      return about.id === view.id
    case 'reference':
      return about.view === view.id
    case 'mark':
      return marks.has(about.id)
    case 'dimension':
      return item.kind === 'size' && item.view === view.id
    case 'found figure':
      return true
    case 'note':
      return item.kind === 'note' && hasMiddleIn(item, view)
  }
}

function hasMiddleIn({ outline }: Item & { kind: 'note' }, view: View): boolean {
  if (view.outline === undefined) return false
  const [note, frame] = [extent(outline), extent(view.outline)]
  const [x, y] = [(note.left + note.right) / 2, (note.top + note.bottom) / 2]
  return x >= frame.left && x <= frame.right && y >= frame.top && y <= frame.bottom
}
