import { useBench } from '../bench/bench-store.ts'
import { choose } from '../bench/choose.ts'
import { STATION_NAMES, STATIONS } from '../bench/stations.ts'
import { guide, TAKE_FIGURE } from '../guide/guide.ts'
import { Button } from '../parts/button.tsx'
import { useLastUsed } from './in-hand/last-used.ts'
import { viewAtWork } from './in-hand/view-at-work.ts'
import { useListOrder } from './read/list-order.ts'

const FOR_LOOKING = 'This job is open read-only: choose a row or a view to see what it rests on.'

/** The station's name, what to do next, and what the one after it still lacks. */
export function DeskHead() {
  const job = useBench((bench) => bench.opened?.job)
  const table = useBench((bench) => bench.table)
  const writable = useBench((bench) => bench.opened?.writable === true)
  const station = useBench((bench) => bench.station)
  const picks = useBench((bench) => bench.picks)
  const last = useLastUsed(({ view }) => view)
  const atWork = useBench((bench) => viewAtWork(bench, last)?.id ?? null)
  const taking = useListOrder((list) => list.taking)
  if (job === undefined) return null
  const { next, missing, about } = guide(job, table, station, picks, atWork)
  const shown = !writable ? FOR_LOOKING : taking ? TAKE_FIGURE : next
  return (
    <div className="desk-head">
      <h2 className="desk-station">
        <span className="desk-number">{STATIONS.indexOf(station) + 1}</span>
        {STATION_NAMES[station]}
      </h2>
      <p className="desk-next" aria-live="polite" data-next>
        {shown}
      </p>
      {about !== undefined && writable && (
        <div>
          <Button kind="quiet" onPress={() => choose(about)}>
            Show it on the sheet and below
          </Button>
        </div>
      )}
      {missing !== null && (
        <p className="desk-missing" data-missing>
          {missing}
        </p>
      )}
    </div>
  )
}
