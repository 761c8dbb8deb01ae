import { useBench } from '../bench/bench-store.ts'
import { cameras } from '../camera/camera-store.ts'
import { onTheBench } from '../camera/look-at.ts'
import { useHowToPick } from '../picking/how-to-pick.ts'
import { wanted } from '../picking/picks.ts'
import { pointer } from '../picking/pointer-store.ts'
import { isByHand } from './by-hand.ts'
import { wantedOn } from './ink-of-sheet.ts'
import { strokeReach } from './reach.ts'
import { glanceAtScan } from './search-scan.ts'
import { glanceFor, wishAgain } from './search-wish.ts'
import { type UnderPointer, underPointer } from './under-pointer.ts'

const tell = (now: UnderPointer): void => underPointer.setState({ now })

/** The pointer must rest no longer than a frame before what is under it is looked at. */
async function look(isNow: () => boolean): Promise<void> {
  const { picks, pictures, opened } = useBench.getState()
  const { pixel, byHand, takesOld } = pointer.getState()
  const here = onTheBench()
  const need = wanted(picks)
  const { tool } = picks
  if (need === null) {
    tell({ state: 'complete' })
    return
  }
  if (here === undefined || pixel === null || isByHand(picks, byHand) || takesOld) {
    tell({ state: 'hand' })
    return
  }
  const shown = pictures[here.sheet]
  const reach = strokeReach(here.camera.zoom, shown)
  if (reach === null || shown === undefined) {
    tell({ state: 'far' })
    return
  }
  const mark = tool.kind === 'repeat' ? opened?.job.marks.find(({ id }) => id === tool.mark) : undefined
  const how = useHowToPick.getState()
  const wish =
    mark?.stroke !== undefined && mark.kind === 'point'
      ? wishAgain(mark.stroke, reach)
      : glanceFor(need, how, here.camera, reach)
  if (wish === null) {
    tell({ state: 'hand' })
    return
  }
  const before = underPointer.getState().now
  if (before.state === 'hand' || before.state === 'far' || before.state === 'complete')
    tell({ state: 'looking' })
  const found = await glanceAtScan(pixel, { ...wish, ...wantedOn(shown, how) }, shown)
  if (found === null || !isNow()) return
  if (found.kind === 'none') tell({ state: 'none', at: pixel, because: found.because })
  else tell({ state: 'found', at: pixel, found })
}

/** Looks at what is under the pointer whenever it moves. The function that comes back ends it. */
export function watchPointer(): () => void {
  let due = 0
  let turn = 0
  const ask = (): void => {
    if (due !== 0) return
    due = requestAnimationFrame(() => {
      due = 0
      const mine = ++turn
      void look(() => mine === turn)
    })
  }
  const endings = [
    pointer.subscribe((now, before) => {
      if (now.pixel !== before.pixel || now.byHand !== before.byHand || now.takesOld !== before.takesOld)
        ask()
    }),
    cameras.subscribe(ask),
    useHowToPick.subscribe(ask),
    useBench.subscribe((now, before) => {
      if (now.picks !== before.picks || now.pictures !== before.pictures) ask()
    }),
  ]
  ask()
  return () => {
    turn++
    cancelAnimationFrame(due)
    tell({ state: 'hand' })
    for (const end of endings) end()
  }
}
