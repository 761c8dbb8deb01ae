import './rail.css'
import { Button } from 'react-aria-components'
import { useBench } from '../bench/bench-store.ts'
import { goTo } from '../bench/choose.ts'
import { STATION_NAMES, STATIONS } from '../bench/stations.ts'
import { Icon } from '../parts/icon.tsx'

/** The stations of the work, numbered like the sheets of a set. */
export function Rail() {
  const station = useBench((bench) => bench.station)
  return (
    <nav className="rail" aria-label="Stations" data-region="rail">
      <ol>
        {STATIONS.map((one, k) => (
          <li key={one}>
            <Button
              className="rail-one"
              onPress={() => goTo(one)}
              aria-current={one === station ? 'page' : undefined}
              data-first={one === station || undefined}
              aria-keyshortcuts={`Alt+${k + 1}`}
            >
              <span className="rail-number">{k + 1}</span>
              <Icon name={one} large />
              <span>{STATION_NAMES[one]}</span>
            </Button>
          </li>
        ))}
      </ol>
    </nav>
  )
}
