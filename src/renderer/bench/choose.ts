import type { Mark } from '../../core/job/model/types.ts'
import type { Aids } from '../looking/aids.ts'
import { sameAids, startingAids } from '../looking/starting-aids.ts'
import { readMiddles } from '../picking/how-to-pick.ts'
import { noPicks, type Picks } from '../picking/picks.ts'
import type { Tool } from '../picking/tool.ts'
import { inWords, reason } from '../words/window-words.ts'
import { aidsOf, type BenchContents, useBench } from './bench-store.ts'
import { getPictures } from './get-pictures.ts'
import { tellOfPicks } from './notices.ts'
import type { Selection } from './selection.ts'
import type { Station } from './stations.ts'

/** Whether the card of what is chosen lies on the desk, in place of what the station offers. */
export const liesOnDesk = ({ kind }: Selection): boolean =>
  kind === 'dimension' || kind === 'mark' || kind === 'note'

/** Whether the desk is taken by what is in hand, so that the card of what is chosen has to wait. */
export const isDeskTaken = ({ features, tool }: Picks): boolean =>
  features.length > 0 || tool.kind === 'note' || tool.kind === 'repeat'

/** Goes to a station; what was being picked is put down (where figures are read the box for them is taken up), and a card that lay on the desk is put away. */
export function goTo(station: Station): void {
  useBench.setState(({ selection, opened }) => ({
    station,
    picks: noPicks(station === 'read' && opened?.writable === true ? { kind: 'figure' } : { kind: 'look' }),
    ...(selection !== null && liesOnDesk(selection) ? { selection: null } : {}),
  }))
}

/** Another sheet on the bench. Picks are pixels of the one before, so they are put down, and so is a view's tool. */
function onBench({ sheet: before, picks }: BenchContents, sheet: string | null): Partial<BenchContents> {
  if (sheet === before) return {}
  return {
    sheet,
    picks: noPicks('view' in picks.tool || picks.tool.kind === 'repeat' ? { kind: 'look' } : picks.tool),
  }
}

/** Takes a tool up, with nothing picked yet. A tool that belongs to a view brings its sheet to the bench. */
export function takeUp(tool: Tool): void {
  readMiddles()
  const { opened, sheet } = useBench.getState()
  const view = 'view' in tool ? opened?.job.views.find(({ id }) => id === tool.view) : undefined
  useBench.setState({ picks: noPicks(tool), sheet: view?.sheet ?? sheet })
}

export const putDown = (): void => takeUp({ kind: 'look' })

export function setPicks(picks: Picks): void {
  useBench.setState({ picks })
}

/** Once picks are kept: the tool that comes next, unless a person has picked otherwise meanwhile. */
export function nextAfter(kept: Picks, tool: Tool): void {
  readMiddles()
  if (useBench.getState().picks === kept) useBench.setState({ picks: noPicks(tool) })
}

/** The marks that show a selection. */
export function marksOf(selection: Selection | null): Mark[] {
  const job = useBench.getState().opened?.job
  if (job === undefined || selection === null) return []
  const ids = new Set<string>()
  if (selection.kind === 'mark') ids.add(selection.id)
  if (selection.kind === 'dimension') {
    const dimension = job.dimensions.find(({ name }) => name === selection.name)
    for (const evidence of dimension?.evidence ?? []) {
      if (evidence.basis === 'scaled') for (const mark of evidence.marks) ids.add(mark)
    }
  }
  if (selection.kind === 'reference') {
    const view = job.views.find(({ id }) => id === selection.view)
    for (const mark of view?.references.find(({ id }) => id === selection.id)?.marks ?? []) ids.add(mark)
  }
  return job.marks.filter(({ id }) => ids.has(id))
}

/** Whether two choices are of the same thing. */
const isSame = (one: Selection | null, other: Selection | null): boolean =>
  one !== null && other !== null && JSON.stringify(one) === JSON.stringify(other)

/**
 * Chooses something and brings the sheet that it is on to the bench, unless something is being picked there; null:
 * nothing is chosen. Where the desk is taken by what is in hand, the person is told that the card waits.
 */
export function choose(selection: Selection | null): void {
  const bench = useBench.getState()
  if (selection?.kind === 'dimension' && isDeskTaken(bench.picks)) {
    tellOfPicks(inWords(reason('choice.card-waits', { name: selection.name })))
  }
  const view =
    selection?.kind === 'view' ? bench.opened?.job.views.find(({ id }) => id === selection.id) : undefined
  const note =
    selection?.kind === 'note' ? bench.opened?.job.notes.find(({ id }) => id === selection.id) : undefined
  const found = selection?.kind === 'found figure' ? selection.sheet : undefined
  const on = view?.sheet ?? found ?? note?.sheet ?? marksOf(selection)[0]?.sheet ?? bench.sheet
  useBench.setState({
    selection,
    choice: isSame(bench.selection, selection) ? bench.choice : bench.choice + 1,
    ...(bench.picks.features.length > 0 ? {} : onBench(bench, on)),
  })
}

/** Puts a sheet on the bench and has its pictures made. */
export async function showSheet(sheet: string): Promise<void> {
  useBench.setState((bench) => onBench(bench, sheet))
  await getPictures(sheet)
}

/** Changes how the sheet on the bench is looked at. */
export function lookWith(aids: Partial<Aids>): void {
  useBench.setState((bench) => {
    const sheet = bench.opened?.job.sheets.find(({ id }) => id === bench.sheet)
    if (sheet === undefined) return {}
    const next = { ...aidsOf(bench, sheet.id), ...aids }
    const { [sheet.id]: _, ...others } = bench.aids
    // As it began it goes on following the job.
    return { aids: sameAids(next, startingAids(sheet)) ? others : { ...others, [sheet.id]: next } }
  })
}
