import { useBench } from '../bench/bench-store.ts'
import { Later } from './later.tsx'
import { PickDesk } from './pick/pick-desk.tsx'
import { ScaleDesk } from './scale/scale-desk.tsx'
import { SheetDesk } from './sheet/sheet-desk.tsx'

/** What a station offers. */
export function StationDesk() {
  const station = useBench((bench) => bench.station)
  switch (station) {
    case 'sheet':
      return <SheetDesk />
    case 'scale':
      return <ScaleDesk />
    case 'pick':
      return <PickDesk />
    default:
      return <Later station={station} />
  }
}
