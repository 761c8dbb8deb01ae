import { aidsOf, useBench } from '../../bench/bench-store.ts'
import { Switch } from '../../parts/switch.tsx'
import { useHowToPick } from '../../picking/how-to-pick.ts'
import { overviewAddress } from '../../tiles/addresses.ts'
import { inkOf } from '../../tiles/the-pictures.ts'
import { otherInkWords } from './ink-words.ts'

/** Asks for strokes in the other ink than the sheet's, as they are seen. */
export function OtherInk({ disabled }: { disabled: boolean }) {
  const otherInk = useHowToPick((how) => how.otherInk)
  const pictures = useBench(({ sheet, pictures }) => (sheet === null ? undefined : pictures[sheet]))
  const negative = useBench((bench) => aidsOf(bench, bench.sheet).negative)
  const ink = pictures === undefined ? null : inkOf(overviewAddress(pictures))
  return (
    <Switch
      {...otherInkWords(ink, negative)}
      on={otherInk}
      disabled={disabled}
      onChange={(on) => useHowToPick.setState({ otherInk: on })}
    />
  )
}
